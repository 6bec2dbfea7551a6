import { InvariantError } from '../units'
import { itemRound } from './itemAt'
import type { Point } from './point'
import type { Ring } from './region'

/**
 * Distance from a point to the nearest place of a segment.
 * @param a,b the segment's ends, mm; they may be the same point
 * @returns mm, ≥ 0
 */
export function pointToSegmentDistanceMm(p: Point, a: Point, b: Point): number {
  const abX = b[0] - a[0]
  const abY = b[1] - a[1]
  const apX = p[0] - a[0]
  const apY = p[1] - a[1]
  const lengthSqMm2 = abX * abX + abY * abY
  if (lengthSqMm2 === 0) return Math.hypot(apX, apY)
  const t = Math.min(1, Math.max(0, (apX * abX + apY * abY) / lengthSqMm2))
  return Math.hypot(apX - t * abX, apY - t * abY)
}

/**
 * Distance from a point to the nearest place of a ring's boundary, be the point inside or outside.
 * @returns mm, ≥ 0
 * @throws InvariantError on an empty ring
 */
export function pointToRingDistanceMm(p: Point, ring: Ring): number {
  if (ring.length === 0) throw new InvariantError('no distance to an empty ring')
  return ring.reduce(
    (least, a, i) => Math.min(least, pointToSegmentDistanceMm(p, a, itemRound(ring, i + 1))),
    Infinity,
  )
}
