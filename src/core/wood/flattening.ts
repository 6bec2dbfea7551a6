import { InvariantError } from '../units'

/** One place where the slab was measured as it lies. */
export interface HeightReading {
  readonly xMm: number
  readonly yMm: number
  /** Height of the upper face over any level line, mm. */
  readonly topMm: number
  /** Thickness there, mm. */
  readonly thicknessMm: number
}

/** A sloping plane: z = c + a·x + b·y. */
export interface Plane {
  readonly alongPerMm: number
  readonly acrossPerMm: number
  readonly atOriginMm: number
}

export interface FaceWork {
  readonly leastMm: number
  readonly greatestMm: number
  readonly passes: number
}

export interface Flattening {
  /** Thickness left when both faces are flat and parallel; negative: no slab is left. */
  readonly flatMm: number
  readonly topPlane: Plane
  readonly bottomPlane: Plane
  readonly top: FaceWork
  readonly bottom: FaceWork
  /** Against what is wanted; negative: short. */
  readonly overWantedMm: number
}

export const LEAST_READINGS = 3
/** Steepest plane looked at: a tenth, far beyond any slab that is worth flattening. */
const STEEPEST = 0.1
const NARROWINGS = 48
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Greatest value of a concave function over an interval, by golden sections. */
function peakOf(value: (at: number) => number): { readonly at: number; readonly value: number } {
  let [low, high] = [-STEEPEST, STEEPEST]
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atLeft, atRight] = [value(left), value(right)]
  for (let step = 0; step < NARROWINGS; step += 1) {
    if (atLeft < atRight) {
      low = left
      ;[left, atLeft] = [right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = value(right)
    } else {
      high = right
      ;[right, atRight] = [left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = value(left)
    }
  }
  const at = (low + high) / 2
  return { at, value: value(at) }
}

interface Faces {
  readonly topMm: number
  readonly bottomMm: number
}

/** The lowest place of the upper face and the highest of the lower, over a slope. */
function facesOver(readings: readonly HeightReading[], along: number, across: number): Faces {
  let [topMm, bottomMm] = [Infinity, -Infinity]
  for (const reading of readings) {
    const slopeMm = along * reading.xMm + across * reading.yMm
    topMm = Math.min(topMm, reading.topMm - slopeMm)
    bottomMm = Math.max(bottomMm, reading.topMm - reading.thicknessMm - slopeMm)
  }
  return { topMm, bottomMm }
}

function workOn(depthsMm: readonly number[], passMm: number): FaceWork {
  const greatestMm = Math.max(0, ...depthsMm)
  return {
    leastMm: Math.max(0, Math.min(...depthsMm)),
    greatestMm,
    passes: Math.ceil(greatestMm / passMm - 1e-6),
  }
}

/**
 * The two parallel planes between which the thickest flat slab lies, and what is taken off for them.
 * @param readings  three or more places, not in one line; between them nothing is known
 * @param passMm    depth of one pass of the cutter, > 0
 * @param wantedMm  thickness that the slab should have when flat
 * @returns null with fewer than three places
 * @throws InvariantError when the depth of a pass is not above zero
 * Method: the thickness between the planes over a slope (a, b) is least top − greatest bottom over that slope, a
 * concave function: golden sections over a, and over b inside. Planes slope by less than a tenth.
 * Rules: WOOD-7.
 */
export function flattening(
  readings: readonly HeightReading[],
  passMm: number,
  wantedMm: number,
): Flattening | null {
  if (!(passMm > 0)) throw new InvariantError('a pass takes something off', { passMm })
  if (readings.length < LEAST_READINGS) return null
  const between = (along: number, across: number): number => {
    const { topMm, bottomMm } = facesOver(readings, along, across)
    return topMm - bottomMm
  }
  const along = peakOf((a) => peakOf((b) => between(a, b)).value).at
  const across = peakOf((b) => between(along, b)).at
  const faces = facesOver(readings, along, across)
  const plane = (atOriginMm: number): Plane => ({ alongPerMm: along, acrossPerMm: across, atOriginMm })
  // A sloping pair of planes is a little closer than it is high.
  const flatMm = (faces.topMm - faces.bottomMm) / Math.hypot(1, along, across)
  const overSlope = ({ xMm, yMm }: HeightReading): number => along * xMm + across * yMm
  return {
    flatMm,
    topPlane: plane(faces.topMm),
    bottomPlane: plane(faces.bottomMm),
    top: workOn(
      readings.map((reading) => reading.topMm - overSlope(reading) - faces.topMm),
      passMm,
    ),
    bottom: workOn(
      readings.map((reading) => faces.bottomMm - (reading.topMm - reading.thicknessMm - overSlope(reading))),
      passMm,
    ),
    overWantedMm: flatMm - wantedMm,
  }
}

const halfway = (a: HeightReading, b: HeightReading, yMm: number): HeightReading => {
  const share = (yMm - a.yMm) / (b.yMm - a.yMm)
  const mix = (from: number, to: number): number => from + share * (to - from)
  return {
    xMm: mix(a.xMm, b.xMm),
    yMm,
    topMm: mix(a.topMm, b.topMm),
    thicknessMm: mix(a.thicknessMm, b.thicknessMm),
  }
}

/**
 * Readings on either side of a rip along the slab; on the rip itself they are made between neighbours across.
 * @param atYMm where the slab is ripped
 * @returns the readings of the far half (smaller y) and of the near half, each with those on the rip
 * Method: straight lines between each reading and its next neighbour across at the same place along (within 1 mm).
 * Rules: WOOD-8.
 */
export function rippedReadings(
  readings: readonly HeightReading[],
  atYMm: number,
): readonly [far: readonly HeightReading[], near: readonly HeightReading[]] {
  const onRip = readings.flatMap((from) => {
    if (from.yMm >= atYMm) return []
    const column = readings.filter(({ xMm, yMm }) => Math.abs(xMm - from.xMm) < 1 && yMm > from.yMm)
    const next = column.toSorted((a, b) => a.yMm - b.yMm)[0]
    return next === undefined || next.yMm <= atYMm ? [] : [halfway(from, next, atYMm)]
  })
  return [
    [...readings.filter(({ yMm }) => yMm <= atYMm), ...onRip],
    [...readings.filter(({ yMm }) => yMm >= atYMm), ...onRip],
  ]
}
