import { autocatalyticLaw, type CureLaw } from './cureLaw'
import { ZERO_CELSIUS_K, type ResinChemistry } from './resinChemistry'
import { topWPerM2K } from './pourSetting'

/** A bucket of mixed resin left standing; hours from mixing. Null: it never gets there. */
export interface BucketHeat {
  readonly plus5Hours: number | null
  readonly plus10Hours: number | null
  readonly reaches60Hours: number | null
  readonly peakC: number
  readonly peakHours: number
}

/** A bucket a little taller than wide, standing on wood: shape of common practice, no source. */
const HEIGHT_PER_DIAMETER = 1.2
const LONGEST_HOURS = 96
const GREATEST_STEP_S = 60
const GREATEST_DEGREE_STEP = 0.004
const COOLING_DEGREE = 0.3

/** The state of a bucket at a moment. */
export interface BucketMoment {
  readonly hours: number
  readonly degree: number
  readonly temperatureC: number
}

/**
 * Loss of a full bucket per kelvin, W/(kg K).
 * Method: a cylinder that loses heat at its side and its top; the resin's own resistance from the mean to the wall is
 * R/(4k). 0 for an endless mass.
 * Rules: RES-15.
 */
export function bucketLossWPerKgK(massKg: number, chemistry: ResinChemistry): number {
  if (massKg === Infinity) return 0
  const volumeM3 = massKg / chemistry.densityKgPerM3
  const diameterM = Math.cbrt((4 * volumeM3) / (Math.PI * HEIGHT_PER_DIAMETER))
  const areaM2 = Math.PI * diameterM * diameterM * (HEIGHT_PER_DIAMETER + 0.25)
  const resistance = 1 / topWPerM2K('still') + diameterM / 8 / chemistry.conductivityWPerMK
  return areaM2 / resistance / massKg
}

/** What warms a well mixed body: a law of cure, its full rise without losses, and its loss. */
export interface LumpedBody {
  readonly law: CureLaw
  readonly fullRiseK: number
  /** Loss over heat capacity, 1/s. */
  readonly lossPerS: number
  readonly roomC: number
  readonly startC: number
}

/**
 * Follows a well mixed body (Semenov's case) until `done`.
 * Method: midpoint steps in degree and temperature.
 * Rules: RES-15.
 */
export function followLumped(
  body: LumpedBody,
  longestHours: number,
  done: (now: BucketMoment) => boolean,
): void {
  const roomK = body.roomC + ZERO_CELSIUS_K
  let kelvin = body.startC + ZERO_CELSIUS_K
  let degree = 0
  let timeS = 0
  while (timeS < longestHours * 3600) {
    const rate = body.law(degree, kelvin)
    const stepS = Math.min(GREATEST_STEP_S, GREATEST_DEGREE_STEP / rate)
    const slope = body.fullRiseK * rate - body.lossPerS * (kelvin - roomK)
    const middle = kelvin + (slope * stepS) / 2
    const middleRate = body.law(degree + (rate * stepS) / 2, middle)
    kelvin += (body.fullRiseK * middleRate - body.lossPerS * (middle - roomK)) * stepS
    degree = Math.min(1, degree + middleRate * stepS)
    timeS += stepS
    if (done({ hours: timeS / 3600, degree, temperatureC: kelvin - ZERO_CELSIUS_K })) return
  }
}

const bodyOf = (chemistry: ResinChemistry, massKg: number, roomC: number, resinC: number): LumpedBody => ({
  law: autocatalyticLaw(chemistry),
  fullRiseK: chemistry.reactionHeatJPerKg / chemistry.heatCapacityJPerKgK,
  lossPerS: bucketLossWPerKgK(massKg, chemistry) / chemistry.heatCapacityJPerKgK,
  roomC,
  startC: resinC,
})

/**
 * How a bucket of mixed resin warms when it is left standing.
 * @param massKg  Infinity: the bound for any mass
 * Rules: RES-15.
 */
export function bucketHeat(
  chemistry: ResinChemistry,
  massKg: number,
  roomC: number,
  resinC: number,
): BucketHeat {
  const wanted = [resinC + 5, resinC + 10, 60]
  const hours: (number | null)[] = [null, null, null]
  let peakC = resinC
  let peakHours = 0
  followLumped(bodyOf(chemistry, massKg, roomC, resinC), LONGEST_HOURS, (now) => {
    wanted.forEach((wantedC, index) => {
      if (now.temperatureC >= wantedC) hours[index] ??= now.hours
    })
    if (now.temperatureC > peakC) {
      peakC = now.temperatureC
      peakHours = now.hours
    }
    return now.degree > COOLING_DEGREE && now.temperatureC < peakC - 1
  })
  const [plus5Hours = null, plus10Hours = null, reaches60Hours = null] = hours
  return { plus5Hours, plus10Hours, reaches60Hours, peakC, peakHours }
}

/**
 * Degree of cure of a bucket after a time.
 * @returns 0 to 1
 */
export function bucketDegree(
  chemistry: ResinChemistry,
  bucket: { readonly massKg: number; readonly roomC: number; readonly resinC: number },
  hours: number,
): number {
  let degree = 0
  followLumped(bodyOf(chemistry, bucket.massKg, bucket.roomC, bucket.resinC), hours, (now) => {
    degree = now.degree
    return false
  })
  return degree
}

/**
 * Time until a bucket reaches a degree of cure.
 * @returns hours; null when it does not within four days
 */
export function bucketHoursToDegree(
  chemistry: ResinChemistry,
  bucket: { readonly massKg: number; readonly roomC: number; readonly resinC: number },
  degree: number,
): number | null {
  let found: number | null = null
  followLumped(bodyOf(chemistry, bucket.massKg, bucket.roomC, bucket.resinC), LONGEST_HOURS, (now) => {
    if (now.degree >= degree) found = now.hours
    return found !== null
  })
  return found
}

/**
 * Time until a bucket is so much warmer than the resin was when it was mixed.
 * @returns hours; null when it is not within four days
 */
export function bucketHoursToWarm(
  chemistry: ResinChemistry,
  bucket: { readonly massKg: number; readonly roomC: number; readonly resinC: number },
  riseK: number,
): number | null {
  let found: number | null = null
  let warmestC = bucket.resinC
  followLumped(bodyOf(chemistry, bucket.massKg, bucket.roomC, bucket.resinC), LONGEST_HOURS, (now) => {
    warmestC = Math.max(warmestC, now.temperatureC)
    if (now.temperatureC >= bucket.resinC + riseK) found = now.hours
    return found !== null || (now.degree > COOLING_DEGREE && now.temperatureC < warmestC - 1)
  })
  return found
}
