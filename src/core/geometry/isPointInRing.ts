import { itemRound } from './itemAt'
import type { Point } from './point'
import type { Region, Ring } from './region'
import { isPointOnSegment } from './segmentCrossing'
import { turnOf } from './sideOfLine'

/**
 * Is a point inside a ring? The boundary counts as inside.
 * @param point mm
 * @param ring  open list, mm, of either sign; of a ring that crosses itself, lobes covered an even number of times are out
 * Method: crossings of the ray to the right, counted with exact side tests, so a point on the boundary is never missed.
 * Rules: GEO-9.
 */
export const isPointInRing = (point: Point, ring: Ring): boolean => placeInRing(point, ring) !== 'outside'

/**
 * Is a point in a region? The boundary of the outer ring and of its holes belongs to the region.
 * Rules: GEO-9.
 */
export const isPointInRegion = (point: Point, region: Region): boolean =>
  isPointInRing(point, region.outer) && region.holes.every((hole) => placeInRing(point, hole) !== 'inside')

/** Where exactly a point lies with respect to a ring. Rules: GEO-9. */
export function placeInRing(point: Point, ring: Ring): 'inside' | 'boundary' | 'outside' {
  let isInside = false
  for (let i = 0; i < ring.length; i += 1) {
    const a = itemRound(ring, i)
    const b = itemRound(ring, i + 1)
    if (isPointOnSegment(point, a, b)) return 'boundary'
    // Half-open in y, so that a vertex at the height of the point is counted once.
    const goesDown = a[1] <= point[1] && b[1] > point[1]
    const goesUp = b[1] <= point[1] && a[1] > point[1]
    const turn = goesDown || goesUp ? turnOf(a, b, point) : 0
    if ((goesDown && turn > 0) || (goesUp && turn < 0)) isInside = !isInside
  }
  return isInside ? 'inside' : 'outside'
}
