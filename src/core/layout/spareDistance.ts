import { type Point, pointToSegmentDistanceMm, type Ring } from '../geometry'

export interface Spare<P extends Point> {
  readonly distanceMm: number
  /** The point of the finished outline nearest to the slab's edge, or the edge's point nearest to the outline. */
  readonly at: P
}

/**
 * Least distance between two outlines that do not cross.
 * @param inner the finished outline; @param outer the slab's outline, same frame, mm
 * Method: the least distance between two polygons is always met at a corner of one of them.
 * Rules: LAY-4.
 */
export function spareDistance<P extends Point>(inner: Ring<P>, outer: Ring<P>): Spare<P> | null {
  const fromCorners = nearest(inner, outer)
  const fromEdge = nearest(outer, inner)
  if (fromCorners === null || fromEdge === null) return fromCorners ?? fromEdge
  return fromCorners.distanceMm <= fromEdge.distanceMm ? fromCorners : fromEdge
}

function nearest<P extends Point>(points: Ring<P>, ring: Ring<P>): Spare<P> | null {
  let best: Spare<P> | null = null
  for (const at of points) {
    for (let index = 0; index < ring.length; index++) {
      const a = ring[index]
      const b = ring[(index + 1) % ring.length]
      if (a === undefined || b === undefined) continue
      const distanceMm = pointToSegmentDistanceMm(at, a, b)
      if (best === null || distanceMm < best.distanceMm) best = { distanceMm, at }
    }
  }
  return best
}
