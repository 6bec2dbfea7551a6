import type { Bounds } from '../../geometry'
import { type ClearanceField, FIELD_STEP_MM } from './clearanceField'
import type { OffcutProfile } from './offcutProfile'

/** Where an offcut's pivot and axis lie in the table frame; turned over before it is turned. */
export interface ProfilePose {
  readonly xMm: number
  readonly yMm: number
  readonly angleRad: number
  readonly turnedOver: boolean
}

export interface RunLimits {
  readonly leastJointMm: number
  readonly leastWidthMm: number
  readonly leastLengthMm: number
  readonly costPerPieceMm2: number
}

/** Wood between two stations that lies clear of all other wood. */
export interface CleanRun {
  readonly fromBin: number
  readonly pastBin: number
  readonly worthMm2: number
}

const numberAt = (row: Float64Array | Float32Array | Int32Array, index: number): number => row[index] ?? 0

/** In the middle of a face only what is well within reach counts; its outline is read finely, mm. */
const MIDDLE_SLACK_MM = 1
/** Reading between cells may be off by so much; the finish measures exactly, mm. */
const FIELD_SLACK_MM = 0.15

/** Fields and rows that the search asks again and again: what a pose fills of the blank, bin by bin. */
export class PoseMeter {
  readonly #box: Bounds
  readonly #limits: RunLimits
  readonly #middleStepMm: number
  #stationWidth = new Float64Array(256)
  #isStationClear = new Uint8Array(256)
  #runs: CleanRun[] = []
  #best: CleanRun | null = null

  constructor(box: Bounds, limits: RunLimits) {
    this.#box = box
    this.#limits = limits
    // No wood that is as wide as the least piece, with its joints, slips between two looks.
    this.#middleStepMm = Math.min(20, limits.leastWidthMm + 2 * limits.leastJointMm - 2 * FIELD_STEP_MM)
    if (!(this.#middleStepMm > FIELD_STEP_MM)) this.#middleStepMm = FIELD_STEP_MM
  }

  /** The run worth most of the last pose looked at. */
  get bestRun(): CleanRun | null {
    return this.#best
  }

  /** All runs of the last pose looked at. */
  get runs(): readonly CleanRun[] {
    return this.#runs
  }

  /** Worth of all clean runs together, mm². */
  worthMm2(field: ClearanceField, profile: OffcutProfile, pose: ProfilePose): number {
    const { bins } = profile
    if (this.#stationWidth.length <= bins) {
      this.#stationWidth = new Float64Array(2 * bins + 2)
      this.#isStationClear = new Uint8Array(2 * bins + 2)
    }
    const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
    const side = pose.turnedOver ? -1 : 1
    for (let k = 0; k <= bins; k += 1) this.#lookAcross(field, profile, k, pose, cos, sin, side)
    return this.#gatherRuns(field, profile, pose, cos, sin, side)
  }

  #lookAcross(
    field: ClearanceField,
    profile: OffcutProfile,
    k: number,
    pose: ProfilePose,
    cos: number,
    sin: number,
    side: number,
  ): void {
    const u = numberAt(profile.stationMm, k)
    const [x, y] = [pose.xMm + u * cos, pose.yMm + u * sin]
    const [dx, dy] = [-sin * side, cos * side]
    const { minX, minY, maxX, maxY } = this.#box
    const low = Math.max(entry(x, dx, minX, maxX), entry(y, dy, minY, maxY))
    const high = Math.min(exit(x, dx, minX, maxX), exit(y, dy, minY, maxY))
    let widthMm = 0
    let isClear = 1
    for (let s = numberAt(profile.spanFrom, k); s < numberAt(profile.spanFrom, k + 1); s += 1) {
      const a = Math.max(low, numberAt(profile.spanLowMm, s))
      const b = Math.min(high, numberAt(profile.spanHighMm, s))
      if (b <= a) continue
      widthMm += b - a
      if (isClear === 1 && !this.#isSpanClear(field, x, y, dx, dy, a, b)) isClear = 0
    }
    this.#stationWidth[k] = widthMm
    this.#isStationClear[k] = isClear
  }

  #isSpanClear(
    field: ClearanceField,
    x: number,
    y: number,
    dx: number,
    dy: number,
    a: number,
    b: number,
  ): boolean {
    const least = this.#limits.leastJointMm - FIELD_SLACK_MM
    if (clearanceAt(field, x + a * dx, y + a * dy) < least) return false
    if (clearanceAt(field, x + b * dx, y + b * dy) < least) return false
    const middleLeast = least - MIDDLE_SLACK_MM
    for (let v = a + this.#middleStepMm; v < b; v += this.#middleStepMm) {
      if (nearestClearance(field, x + v * dx, y + v * dy) < middleLeast) return false
    }
    return true
  }

  #gatherRuns(
    field: ClearanceField,
    profile: OffcutProfile,
    pose: ProfilePose,
    cos: number,
    sin: number,
    side: number,
  ): number {
    const { bins, stepMm } = profile
    this.#runs = []
    this.#best = null
    let [worth, from, areaMm2] = [0, -1, 0]
    for (let bin = 0; bin <= bins; bin += 1) {
      if (bin < bins && this.#isBinClear(field, profile, bin, pose, cos, sin, side)) {
        if (from < 0) [from, areaMm2] = [bin, 0]
        areaMm2 += ((numberAt(this.#stationWidth, bin) + numberAt(this.#stationWidth, bin + 1)) / 2) * stepMm
      } else if (from >= 0) {
        worth += this.#endRun(from, bin, areaMm2, stepMm)
        from = -1
      }
    }
    return worth
  }

  #endRun(fromBin: number, pastBin: number, areaMm2: number, stepMm: number): number {
    const worthMm2 = areaMm2 - this.#limits.costPerPieceMm2
    if (worthMm2 <= 0 || (pastBin - fromBin) * stepMm < this.#limits.leastLengthMm) return 0
    const run = { fromBin, pastBin, worthMm2 }
    this.#runs.push(run)
    if (this.#best === null || worthMm2 > this.#best.worthMm2) this.#best = run
    return worthMm2
  }

  #isBinClear(
    field: ClearanceField,
    profile: OffcutProfile,
    bin: number,
    pose: ProfilePose,
    cos: number,
    sin: number,
    side: number,
  ): boolean {
    if (this.#isStationClear[bin] === 0 || this.#isStationClear[bin + 1] === 0) return false
    const narrow = Math.min(numberAt(this.#stationWidth, bin), numberAt(this.#stationWidth, bin + 1))
    if (narrow < this.#limits.leastWidthMm) return false
    const least = this.#limits.leastJointMm - FIELD_SLACK_MM
    const { minX, minY, maxX, maxY } = this.#box
    const past = numberAt(profile.sampleFrom, bin + 1)
    for (let s = numberAt(profile.sampleFrom, bin); s < past; s += 1) {
      const u = numberAt(profile.sampleU, s)
      const v = numberAt(profile.sampleV, s) * side
      const [x, y] = [pose.xMm + u * cos - v * sin, pose.yMm + u * sin + v * cos]
      if (x < minX || x > maxX || y < minY || y > maxY) continue
      if (clearanceAt(field, x, y) < least) return false
    }
    return true
  }
}

/** Where a line that begins at x and goes by d enters the interval; Infinity: it never does. */
function entry(x: number, d: number, min: number, max: number): number {
  if (d > 1e-9) return (min - x) / d
  if (d < -1e-9) return (max - x) / d
  return x >= min && x <= max ? -Infinity : Infinity
}

function exit(x: number, d: number, min: number, max: number): number {
  if (d > 1e-9) return (max - x) / d
  if (d < -1e-9) return (min - x) / d
  return x >= min && x <= max ? Infinity : -Infinity
}

/** Clearance read linearly between four cells; the place lies in the box. */
function clearanceAt({ box, columns, mm }: ClearanceField, x: number, y: number): number {
  const cx = Math.max(0, (x - box.minX) / FIELD_STEP_MM)
  const cy = Math.max(0, (y - box.minY) / FIELD_STEP_MM)
  const [column, row] = [Math.floor(cx), Math.floor(cy)]
  const [fx, fy] = [cx - column, cy - row]
  const at = row * columns + column
  const upper = numberAt(mm, at) * (1 - fx) + numberAt(mm, at + 1) * fx
  const lower = numberAt(mm, at + columns) * (1 - fx) + numberAt(mm, at + columns + 1) * fx
  return upper * (1 - fy) + lower * fy
}

function nearestClearance({ box, columns, mm }: ClearanceField, x: number, y: number): number {
  const column = Math.round((x - box.minX) / FIELD_STEP_MM)
  const row = Math.round((y - box.minY) / FIELD_STEP_MM)
  return numberAt(mm, row * columns + column)
}
