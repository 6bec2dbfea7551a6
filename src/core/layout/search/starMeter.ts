import { type Ring, ringAreaMm2 } from '../../geometry'
import { ok, problem, type Result } from '../../units'
import { type EdgeSet, edgeSubset, numberAt } from './edgeSet'
import { type GrowthMeter, type ShapeBox, type ShapeFacts, shapeFacts } from './growingShape'
import { viewpoint } from './viewpoint'
import { type BoxBlur, sideBlur } from './poseBox'
import type { MiddlePose } from './poseWorth'

/** An outline with inward corners, all of it seen from its middle: it grows about that place. */
export interface StarShape extends ShapeFacts {
  /** Corners from the middle, by rising angle. */
  readonly x: Float64Array
  readonly y: Float64Array
  readonly angleRad: Float64Array
  readonly rimMm: number
  /** Least distance of a side's line from the middle, mm. */
  readonly nearMm: number
}

/**
 * An outline that grows about a place from which all of it is seen.
 * @param ring positive, in the table frame, mm
 * @returns 'cover-outline-hidden' when there is no such place, e.g. for a U
 */
export function starShape(ring: Ring): Result<StarShape> {
  if (!(ringAreaMm2(ring) > 0)) return problem('cover-table-no-size', {})
  const seen = viewpoint(ring)
  if (seen === null) return problem('cover-outline-hidden', {})
  const corners = ring
    .map(([x, y]) => ({ x: x - seen.at[0], y: y - seen.at[1] }))
    .map((p) => ({ ...p, angleRad: Math.atan2(p.y, p.x) }))
    .sort((p, q) => p.angleRad - q.angleRad)
  return ok({
    ...shapeFacts(ring, seen.at),
    x: Float64Array.from(corners, (p) => p.x),
    y: Float64Array.from(corners, (p) => p.y),
    angleRad: Float64Array.from(corners, (p) => p.angleRad),
    rimMm: Math.max(...corners.map((p) => Math.hypot(p.x, p.y))),
    nearMm: seen.distanceMm,
  })
}

/**
 * How far a star-shaped outline may grow, as a factor, before it reaches edges of wood.
 *
 * Method: the factor at which a place is reached changes evenly between the rays to two neighbouring corners, so its least
 * on an edge is at an end or on a ray. A pose's move by e changes it by at most |e|/nearMm.
 */
export class StarMeter implements GrowthMeter {
  readonly #shape: StarShape
  readonly #kept: Int32Array
  #edge = 0

  constructor(shape: StarShape, mostEdges: number) {
    this.#shape = shape
    this.#kept = new Int32Array(mostEdges)
  }

  valueAt(edges: EdgeSet, { xMm, yMm, angleRad }: MiddlePose, floor: number): number {
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    const { ax, ay, bx, by, count } = edges
    const first = this.#edge < count ? this.#edge : 0
    let least = Infinity
    for (let k = 0; k < count && least > floor; k += 1) {
      const i = (first + k) % count
      const [x1, y1] = [numberAt(ax, i) - xMm, numberAt(ay, i) - yMm]
      const [x2, y2] = [numberAt(bx, i) - xMm, numberAt(by, i) - yMm]
      if (distanceFromOrigin(x1, y1, x2, y2) >= least * this.#shape.rimMm) continue
      const found = this.#leastOn(
        x1 * cos + y1 * sin,
        y1 * cos - x1 * sin,
        x2 * cos + y2 * sin,
        y2 * cos - x2 * sin,
      )
      if (found >= least) continue
      least = found
      this.#edge = i
    }
    return least
  }

  bound(box: ShapeBox, floor: number): number {
    const { shift, turn } = this.#looseness(box)
    const value = this.valueAt(box.edges, box, (floor - shift) * (1 - turn))
    return raised(value, shift, turn)
  }

  boundOutside(box: ShapeBox): number {
    const { shift, turn } = this.#looseness(box)
    return raised(0, shift, turn)
  }

  blurOf(box: ShapeBox): BoxBlur {
    return sideBlur(box, this.#shape.lengthMm, this.#shape.widthMm)
  }

  reachable(box: ShapeBox): EdgeSet {
    const { edges } = box
    const { shift, turn } = this.#looseness(box)
    const reachMm = (box.bound * (1 + turn) + shift) * this.#shape.rimMm
    let count = 0
    for (let i = 0; i < edges.count; i += 1) {
      const [x1, y1] = [numberAt(edges.ax, i) - box.xMm, numberAt(edges.ay, i) - box.yMm]
      const [x2, y2] = [numberAt(edges.bx, i) - box.xMm, numberAt(edges.by, i) - box.yMm]
      if (distanceFromOrigin(x1, y1, x2, y2) > reachMm) continue
      this.#kept[count] = i
      count += 1
    }
    return count < 0.8 * edges.count ? edgeSubset(edges, this.#kept, count) : edges
  }

  /** By how much the poses of a box change a factor: by a move, and by a turn for each unit of the factor. */
  #looseness(box: ShapeBox): { readonly shift: number; readonly turn: number } {
    const { nearMm, rimMm } = this.#shape
    return {
      shift: Math.hypot(box.halfAlongMm, box.halfAcrossMm) / nearMm,
      turn: Math.min(0.9, (2 * Math.sin(box.halfAngleRad / 2) * rimMm) / nearMm),
    }
  }

  /** Least factor on an edge: at its ends and where it crosses rays to corners. */
  #leastOn(u1: number, v1: number, u2: number, v2: number): number {
    const { x, y, angleRad } = this.#shape
    const count = x.length
    let least = Math.min(this.#factorAt(u1, v1), this.#factorAt(u2, v2))
    const isRising = u1 * v2 - u2 * v1 > 0
    const [from, to] = isRising
      ? [Math.atan2(v1, u1), Math.atan2(v2, u2)]
      : [Math.atan2(v2, u2), Math.atan2(v1, u1)]
    const sweep = to >= from ? to - from : to - from + 2 * Math.PI
    const start = firstAbove(angleRad, from)
    for (let k = 0; k < count; k += 1) {
      const i = (start + k) % count
      const turned = numberAt(angleRad, i) - from
      if ((turned >= 0 ? turned : turned + 2 * Math.PI) > sweep) break
      const [cx, cy] = [numberAt(x, i), numberAt(y, i)]
      const side1 = u1 * cy - v1 * cx
      const t = side1 / (side1 - (u2 * cy - v2 * cx))
      const along = (u1 + t * (u2 - u1)) * cx + (v1 + t * (v2 - v1)) * cy
      least = Math.min(least, along / (cx * cx + cy * cy))
    }
    return least
  }

  /** The factor at which a place is reached: by the side between the two corners whose rays enclose it. */
  #factorAt(u: number, v: number): number {
    const { x, y, angleRad } = this.#shape
    const count = x.length
    const next = firstAbove(angleRad, Math.atan2(v, u)) % count
    const before = (next + count - 1) % count
    const [ax, ay] = [numberAt(x, before), numberAt(y, before)]
    const [dx, dy] = [numberAt(x, next) - ax, numberAt(y, next) - ay]
    return (u * dy - v * dx) / (ax * dy - ay * dx)
  }
}

/** The factor of a pose in the box from its blurred count: f ≤ value + shift + turn·f. */
const raised = (value: number, shift: number, turn: number): number => (value + shift) / (1 - turn)

/** Index of the first angle above a given one; the count when there is none. */
function firstAbove(anglesRad: Float64Array, angleRad: number): number {
  let [low, high] = [0, anglesRad.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (numberAt(anglesRad, middle) > angleRad) high = middle
    else low = middle + 1
  }
  return low
}

function distanceFromOrigin(x1: number, y1: number, x2: number, y2: number): number {
  const [dx, dy] = [x2 - x1, y2 - y1]
  const lengthSq = dx * dx + dy * dy
  const t = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, -(x1 * dx + y1 * dy) / lengthSq))
  return Math.hypot(x1 + t * dx, y1 + t * dy)
}
