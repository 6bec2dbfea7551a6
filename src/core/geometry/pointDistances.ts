import { InvariantError } from '../units'
import type { Point } from './point'
import type { Ring } from './region'

/**
 * Distance from a point to the nearest place of a segment.
 * @param a,b the segment's ends, mm; they may be the same point
 * @returns mm, ≥ 0
 */
export const pointToSegmentDistanceMm = (p: Point, a: Point, b: Point): number =>
  Math.sqrt(pointToSegmentDistanceSqMm2(p, a, b))

/** The square of the above: least distances compare squares and take one root at the end. */
function pointToSegmentDistanceSqMm2(p: Point, a: Point, b: Point): number {
  const abX = b[0] - a[0]
  const abY = b[1] - a[1]
  const apX = p[0] - a[0]
  const apY = p[1] - a[1]
  const lengthSqMm2 = abX * abX + abY * abY
  const along = lengthSqMm2 === 0 ? 0 : (apX * abX + apY * abY) / lengthSqMm2
  const t = along < 0 ? 0 : along > 1 ? 1 : along
  const dx = apX - t * abX
  const dy = apY - t * abY
  return dx * dx + dy * dy
}

/**
 * Distance from a point to the nearest place of a ring's boundary, be the point inside or outside.
 * @returns mm, ≥ 0
 * @throws InvariantError on an empty ring
 */
export function pointToRingDistanceMm(p: Point, ring: Ring): number {
  let from = ring.at(-1)
  if (from === undefined) throw new InvariantError('no distance to an empty ring')
  let leastSqMm2 = Infinity
  for (const to of ring) {
    const candidateSqMm2 = pointToSegmentDistanceSqMm2(p, from, to)
    if (candidateSqMm2 < leastSqMm2) leastSqMm2 = candidateSqMm2
    from = to
  }
  return Math.sqrt(leastSqMm2)
}
