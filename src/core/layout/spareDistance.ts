import { dotOf, type Point, pointDistanceMm, type Ring, subtractPoints } from '../geometry'

export interface Spare<P extends Point> {
  readonly distanceMm: number
  /** The point of the finished outline nearest to the slab's edge. */
  readonly onTable: P
  /** The point of the slab's edge nearest to the finished outline. */
  readonly onEdge: P
  /** Met at a corner of the table, not along a side. */
  readonly isAtCorner: boolean
}

/**
 * Least distance between two outlines that do not cross.
 * @param inner the finished outline; @param outer the slab's outline, same frame, mm
 * @param make makes a point of their frame
 * Method: the least distance between two polygons is always met at a corner of one of them.
 * Rules: LAY-4.
 */
export function spareDistance<P extends Point>(
  inner: Ring<P>,
  outer: Ring<P>,
  make: (x: number, y: number) => P,
): Spare<P> | null {
  const fromCorners = nearest(inner, outer, make)
  const fromEdge = nearest(outer, inner, make)
  const isFromCorner =
    fromCorners !== null && (fromEdge === null || fromCorners.distanceMm <= fromEdge.distanceMm)
  if (isFromCorner) {
    const { distanceMm, at, foot } = fromCorners
    return { distanceMm, onTable: at, onEdge: foot, isAtCorner: isSharp(inner, at) }
  }
  if (fromEdge === null) return null
  const { distanceMm, at, foot } = fromEdge
  return { distanceMm, onTable: foot, onEdge: at, isAtCorner: isSharp(inner, foot) }
}

interface Nearest<P extends Point> {
  readonly distanceMm: number
  readonly at: P
  readonly foot: P
}

function nearest<P extends Point>(
  points: Ring<P>,
  ring: Ring<P>,
  make: (x: number, y: number) => P,
): Nearest<P> | null {
  let best: Nearest<P> | null = null
  for (const at of points) {
    for (let index = 0; index < ring.length; index++) {
      const a = ring[index]
      const b = ring[(index + 1) % ring.length]
      if (a === undefined || b === undefined) continue
      const foot = footOn(at, a, b, make)
      const distanceMm = pointDistanceMm(at, foot)
      if (best === null || distanceMm < best.distanceMm) best = { distanceMm, at, foot }
    }
  }
  return best
}

function footOn<P extends Point>(at: P, a: P, b: P, make: (x: number, y: number) => P): P {
  const along = subtractPoints(b, a)
  const lengthSq = dotOf(along, along)
  const t = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, dotOf(subtractPoints(at, a), along) / lengthSq))
  return make(a[0] + t * along[0], a[1] + t * along[1])
}

/** Nearer to a corner than this counts as at it, mm. */
const AT_CORNER_MM = 1
/** A rounding is drawn in short straight pieces; a corner turns by more than two of them. */
const CORNER_COS = Math.cos((20 * Math.PI) / 180)

/** Does the outline turn a corner where a point lies on it? */
function isSharp(ring: Ring<Point>, at: Point): boolean {
  const index = ring.findIndex((corner) => pointDistanceMm(corner, at) <= AT_CORNER_MM)
  const corner = ring[index]
  const before = ring[(index + ring.length - 1) % ring.length]
  const next = ring[(index + 1) % ring.length]
  if (corner === undefined || before === undefined || next === undefined) return false
  const [into, out] = [subtractPoints(corner, before), subtractPoints(next, corner)]
  return dotOf(into, out) < CORNER_COS * Math.hypot(into[0], into[1]) * Math.hypot(out[0], out[1])
}
