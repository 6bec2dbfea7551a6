import type { EdgeSet } from './edgeSet'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/** A turned rectangle: its middle relative to the wood's pivot, its direction, and half its sides, mm. */
export interface TurnedBox {
  readonly xMm: number
  readonly yMm: number
  readonly angleRad: number
  readonly halfLengthMm: number
  readonly halfWidthMm: number
}

/** Area of wood in a turned rectangle, and how it changes as the rectangle is moved and turned about its middle. */
export interface AreaGradient {
  readonly areaMm2: number
  readonly perXMm: number
  readonly perYMm: number
  readonly perRadMm2: number
  /** Length of the two ends, and of the two long sides, that lies in wood. */
  readonly endsMm: number
  readonly sidesMm: number
}

/**
 * Wood in a turned rectangle.
 * @param edges outer rings positive, holes negative: holes count as no wood
 * @returns mm², exact to rounding; no clipping
 *
 * Method: in the rectangle's own axes u, v, with half sides a, b, the area is Σ over edges of ∫ clamp(v, −b, b) du over
 * the edge's part with |u| ≤ a (Green's theorem for the field clamp(v, −b, b) within |u| ≤ a). Rules: LAY-10.
 */
export function areaInBox(edges: EdgeSet, box: TurnedBox): number {
  const [cos, sin] = [Math.cos(box.angleRad), Math.sin(box.angleRad)]
  const { xMm, yMm, halfLengthMm: a, halfWidthMm: b } = box
  const { ax, ay, bx, by, count } = edges
  let area = 0
  for (let i = 0; i < count; i += 1) {
    const x1 = numberAt(ax, i) - xMm
    const y1 = numberAt(ay, i) - yMm
    const x2 = numberAt(bx, i) - xMm
    const y2 = numberAt(by, i) - yMm
    const u1 = x1 * cos + y1 * sin
    const u2 = x2 * cos + y2 * sin
    if ((u1 >= a && u2 >= a) || (u1 <= -a && u2 <= -a)) continue
    area -= clampedUnderEdge(u1, y1 * cos - x1 * sin, u2, y2 * cos - x2 * sin, a, b)
  }
  return area
}

/**
 * Wood in a turned rectangle with its gradient.
 * Method: as `areaInBox`; the change of area is the length of each side that lies in wood (for a move) and its first
 * moment (for a turn), which the same edges give by where they cross the side's line. Rules: LAY-10, LAY-11.
 */
export function areaKernel(edges: EdgeSet, box: TurnedBox): AreaGradient {
  const sums = new SideSums(box.halfLengthMm, box.halfWidthMm)
  const [cos, sin] = [Math.cos(box.angleRad), Math.sin(box.angleRad)]
  const { ax, ay, bx, by, count } = edges
  for (let i = 0; i < count; i += 1) {
    const x1 = numberAt(ax, i) - box.xMm
    const y1 = numberAt(ay, i) - box.yMm
    const x2 = numberAt(bx, i) - box.xMm
    const y2 = numberAt(by, i) - box.yMm
    sums.add(x1 * cos + y1 * sin, y1 * cos - x1 * sin, x2 * cos + y2 * sin, y2 * cos - x2 * sin)
  }
  const perU = sums.endLength - sums.startLength
  const perV = sums.nearLength - sums.farLength
  return {
    areaMm2: sums.area,
    perXMm: perU * cos - perV * sin,
    perYMm: perU * sin + perV * cos,
    perRadMm2: sums.startMoment - sums.endMoment + sums.nearMoment - sums.farMoment,
    endsMm: sums.startLength + sums.endLength,
    sidesMm: sums.farLength + sums.nearLength,
  }
}

/** Area, and of each side (u = ±a, v = ±b) the length in wood and its moment about the side's middle. */
class SideSums {
  area = 0
  startLength = 0
  startMoment = 0
  endLength = 0
  endMoment = 0
  farLength = 0
  farMoment = 0
  nearLength = 0
  nearMoment = 0
  readonly #a: number
  readonly #b: number

  constructor(a: number, b: number) {
    this.#a = a
    this.#b = b
  }

  add(u1: number, v1: number, u2: number, v2: number): void {
    const a = this.#a
    if ((u1 < a || u2 < a) && (u1 > -a || u2 > -a)) {
      this.area -= clampedUnderEdge(u1, v1, u2, v2, a, this.#b)
    }
    this.#addAlong(u1, v1, u2, v2)
    this.#addAcross(u1, v1, u2, v2)
  }

  /** Where the edge crosses the lines of the two long sides. */
  #addAlong(u1: number, v1: number, u2: number, v2: number): void {
    const b = this.#b
    if (v1 <= b !== v2 <= b) this.#crossNear(v1 <= b ? 1 : -1, crossing(v1, u1, v2, u2, b))
    if (v1 <= -b !== v2 <= -b) this.#crossFar(v1 <= -b ? 1 : -1, crossing(v1, u1, v2, u2, -b))
  }

  /** Where the edge crosses the lines of the two ends. */
  #addAcross(u1: number, v1: number, u2: number, v2: number): void {
    const a = this.#a
    if (u1 <= a !== u2 <= a) this.#crossEnd(u1 <= a ? -1 : 1, crossing(u1, v1, u2, v2, a))
    if (u1 <= -a !== u2 <= -a) this.#crossStart(u1 <= -a ? -1 : 1, crossing(u1, v1, u2, v2, -a))
  }

  #crossEnd(sign: number, v: number): void {
    const at = clamp(v, this.#b)
    this.endLength += sign * at
    this.endMoment += (sign * at * at) / 2
  }

  #crossStart(sign: number, v: number): void {
    const at = clamp(v, this.#b)
    this.startLength += sign * at
    this.startMoment += (sign * at * at) / 2
  }

  #crossNear(sign: number, u: number): void {
    const at = clamp(u, this.#a)
    this.nearLength += sign * at
    this.nearMoment += (sign * at * at) / 2
  }

  #crossFar(sign: number, u: number): void {
    const at = clamp(u, this.#a)
    this.farLength += sign * at
    this.farMoment += (sign * at * at) / 2
  }
}

const clamp = (value: number, half: number): number => (value > half ? half : value < -half ? -half : value)

/** Where an edge crosses the line p = at: its q there. */
const crossing = (p1: number, q1: number, p2: number, q2: number, at: number): number =>
  q1 + ((q2 - q1) * (at - p1)) / (p2 - p1)

/** ∫ clamp(v, −b, b) du along an edge, over its part with |u| ≤ a. */
function clampedUnderEdge(u1: number, v1: number, u2: number, v2: number, a: number, b: number): number {
  let [uFrom, vFrom, uTo, vTo] = [u1, v1, u2, v2]
  if (u1 < -a || u1 > a) {
    uFrom = clamp(u1, a)
    vFrom = crossing(u1, v1, u2, v2, uFrom)
  }
  if (u2 < -a || u2 > a) {
    uTo = clamp(u2, a)
    vTo = crossing(u1, v1, u2, v2, uTo)
  }
  return (uTo - uFrom) * meanClamped(vFrom, vTo, b)
}

/** Mean of clamp(v, −half, half) while v runs evenly from one value to another. */
export function meanClamped(v1: number, v2: number, half: number): number {
  const low = Math.min(v1, v2)
  const high = Math.max(v1, v2)
  if (low >= half) return half
  if (high <= -half) return -half
  if (low >= -half && high <= half) return (low + high) / 2
  const below = Math.max(0, (-half - low) / (high - low))
  const above = Math.max(0, (high - half) / (high - low))
  const middle = (Math.max(low, -half) + Math.min(high, half)) / 2
  return (above - below) * half + (1 - below - above) * middle
}
