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
  let a = ring.at(-1) ?? point
  for (const b of ring) {
    const isWithinHeight = (a[1] <= point[1] || b[1] <= point[1]) && (a[1] >= point[1] || b[1] >= point[1])
    if (isWithinHeight) {
      if (isPointOnSegment(point, a, b)) return 'boundary'
      if (isRayCrossing(point, a, b)) isInside = !isInside
    }
    a = b
  }
  return isInside ? 'inside' : 'outside'
}

/** Does the ray from the point to the right cross the edge? Half-open in y, so that a vertex on the ray is counted once. */
function isRayCrossing(point: Point, a: Point, b: Point): boolean {
  if (a[1] <= point[1] === b[1] <= point[1]) return false
  const turn = turnOf(a, b, point)
  return a[1] <= point[1] ? turn > 0 : turn < 0
}
