import { brandedPoint } from './brandedPoint'
import type { Point } from './point'
import { turnOf } from './sideOfLine'

/**
 * Where two segments meet.
 * @param a,b the first segment's ends, mm
 * @param c,d the second segment's ends, mm
 * @returns the shared point; null when there is none. Touching counts. When an end lies on the other segment that end
 *   itself is returned, unrounded. When the segments run along each other: the shared point nearest to a.
 * Method: exact side tests decide *whether* they meet; *where* is rounded to the nearest double or two.
 * Rules: GEO-9.
 */
export function segmentCrossing<P extends Point>(a: P, b: P, c: P, d: P): P | null {
  if (boxesApart(a, b, c, d)) return null
  const sideC = turnOf(a, b, c)
  const sideD = turnOf(a, b, d)
  const sideA = turnOf(c, d, a)
  const sideB = turnOf(c, d, b)
  if (isSameSide(sideC, sideD) || isSameSide(sideA, sideB)) return null
  if (sideA === 0 || sideB === 0 || sideC === 0 || sideD === 0) return touchingPoint(a, b, c, d)
  const t = sideA / (sideA - sideB)
  return brandedPoint<P>(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
}

const isSameSide = (one: number, other: number): boolean => (one > 0 && other > 0) || (one < 0 && other < 0)

/** True when the upright boxes of two segments share no point: then neither do the segments. */
export const boxesApart = (a: Point, b: Point, c: Point, d: Point): boolean =>
  apart(a[0], b[0], c[0], d[0]) || apart(a[1], b[1], c[1], d[1])

const apart = (a: number, b: number, c: number, d: number): boolean =>
  Math.max(a, b) < Math.min(c, d) || Math.max(c, d) < Math.min(a, b)

/** Is p exactly on the segment a–b, its ends included? Rules: GEO-9. */
export const isPointOnSegment = (p: Point, a: Point, b: Point): boolean =>
  !apart(a[0], b[0], p[0], p[0]) && !apart(a[1], b[1], p[1], p[1]) && turnOf(a, b, p) === 0

/** At least one end lies on the other segment's line; the nearest such end to a that lies on both segments. */
function touchingPoint<P extends Point>(a: P, b: P, c: P, d: P): P | null {
  if (isPointOnSegment(a, c, d)) return a
  const onFirst = [c, d].filter((end) => isPointOnSegment(end, a, b))
  if (isPointOnSegment(b, c, d)) onFirst.push(b)
  const distanceTo = (p: Point): number => Math.hypot(p[0] - a[0], p[1] - a[1])
  return onFirst.reduce<P | null>(
    (best, end) => (best === null || distanceTo(end) < distanceTo(best) ? end : best),
    null,
  )
}
