import {
  type Point,
  pointDistanceMm,
  pointToSegmentDistanceMm,
  type Ring,
  ringAreaMm2,
  ringCentroid,
} from '../../geometry'
import { ok, problem, type Result } from '../../units'
import type { EdgeSet } from './edgeSet'
import type { BoxBlur, PoseBox } from './poseBox'
import type { MiddlePose } from './poseWorth'

/**
 * A convex shape that grows with one number s: {q : nᵢ·q ≤ startᵢ + s·rateᵢ}, q from its middle. As a factor of its size
 * (start 0, rate dᵢ) or by an even margin on all sides (start dᵢ, rate 1).
 */
export interface ConvexShape extends ShapeFacts {
  readonly count: number
  readonly nx: Float64Array
  readonly ny: Float64Array
  readonly start: Float64Array
  readonly rate: Float64Array
}

export interface ShapeFacts {
  /** Its middle in the table frame, mm: the place about which it grows. */
  readonly middle: Point
  /** Size of the shape as given, mm. */
  readonly lengthMm: number
  readonly widthMm: number
  /** It looks the same after this turn. */
  readonly symmetry: 'any-turn' | 'half-turn' | 'none'
}

export type Growth = 'factor' | 'margin'

/** A box of poses with the edges of wood that a shape may reach in it. */
export interface ShapeBox extends PoseBox {
  readonly edges: EdgeSet
}

/** How far a shape may grow before it reaches wood's edges. */
export interface GrowthMeter {
  /**
   * @param floor growth that is of no interest: the count stops there
   * @returns the growth at a pose, or one that is at most the floor; Infinity when no edge is ever reached
   */
  valueAt(edges: EdgeSet, pose: MiddlePose, floor: number): number
  /** @returns what no pose of the box exceeds, or something that is at most the floor */
  bound(box: ShapeBox, floor: number): number
  /** The same when the box's middle is not in the wood. */
  boundOutside(box: ShapeBox): number
  /** What kept up the bound asked for last: which side of the box to halve. */
  blurOf(box: ShapeBox): BoxBlur
  /** The edges that may still stop a shape in the box; the box's own when there is little to leave out. */
  reachable(box: ShapeBox): EdgeSet
}

/** Corners of a shape turned by half a turn lie within this of corners or sides, mm, for it to count as symmetric. */
const SYMMETRY_MM = 0.2

/** What a search needs to know of any outline. */
export const shapeFacts = (ring: Ring, middle: Point): ShapeFacts => ({
  middle,
  ...sizeOf(ring),
  symmetry: symmetryOf(ring, middle),
})

/**
 * A convex outline that grows.
 * @param ring positive, in the table frame, mm
 * @returns 'cover-outline-not-convex' when a corner points inwards by more than a rounding
 */
export function convexShape(ring: Ring, growth: Growth): Result<ConvexShape> {
  if (!(ringAreaMm2(ring) > 0)) return problem('cover-table-no-size', {})
  const middle = ringCentroid(ring)
  const sides = ring.flatMap((a, i) => sideOf(a, ring[(i + 1) % ring.length] ?? a, middle))
  if (sides.some(({ d }) => d <= 0) || !isConvex(ring, sides)) return problem('cover-outline-not-convex', {})
  const row = (pick: (side: Side) => number): Float64Array => Float64Array.from(sides, pick)
  return ok({
    count: sides.length,
    nx: row(({ nx }) => nx),
    ny: row(({ ny }) => ny),
    start: row(({ d }) => (growth === 'margin' ? d : 0)),
    rate: row(({ d }) => (growth === 'margin' ? 1 : d)),
    ...shapeFacts(ring, middle),
  })
}

interface Side {
  readonly nx: number
  readonly ny: number
  readonly d: number
}

/** The outward normal of a side of a positive ring, and the side's distance from the middle. */
function sideOf(a: Point, b: Point, middle: Point): readonly Side[] {
  const lengthMm = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (lengthMm < 1e-9) return []
  const [nx, ny] = [(b[1] - a[1]) / lengthMm, (a[0] - b[0]) / lengthMm]
  return [{ nx, ny, d: nx * (a[0] - middle[0]) + ny * (a[1] - middle[1]) }]
}

const CONVEX_TOLERANCE_MM = 0.01

const isConvex = (ring: Ring, sides: readonly Side[]): boolean => {
  const middle = ringCentroid(ring)
  return sides.every(({ nx, ny, d }) =>
    ring.every(([x, y]) => nx * (x - middle[0]) + ny * (y - middle[1]) <= d + CONVEX_TOLERANCE_MM),
  )
}

function sizeOf(ring: Ring): { readonly lengthMm: number; readonly widthMm: number } {
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  return { lengthMm: Math.max(...xs) - Math.min(...xs), widthMm: Math.max(...ys) - Math.min(...ys) }
}

function symmetryOf(ring: Ring, middle: Point): ShapeFacts['symmetry'] {
  const edges = ring.map((a, i) => [a, ring[(i + 1) % ring.length] ?? a] as const)
  const radii = ring.map((p) => pointDistanceMm(p, middle))
  const inner = edges.map(([a, b]) => pointToSegmentDistanceMm(middle, a, b))
  if (Math.max(...radii) - Math.min(...inner) < SYMMETRY_MM) return 'any-turn'
  const isHalf = ring.every(([x, y]) => {
    const across: Point = [2 * middle[0] - x, 2 * middle[1] - y]
    return edges.some(([a, b]) => pointToSegmentDistanceMm(across, a, b) < SYMMETRY_MM)
  })
  return isHalf ? 'half-turn' : 'none'
}
