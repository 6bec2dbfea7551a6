import type { Result } from '../units'
import { ok, problem } from '../units'
import { itemAt } from './itemAt'
import type { Point } from './point'
import { pointDistanceMm } from './pointArithmetic'
import type { Ring } from './region'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'
import { ringSelfCrossing } from './ringSelfCrossing'
import { turnOf } from './sideOfLine'
import { JOIN_TOLERANCE_MM, SLIVER_AREA_MM2 } from './tolerance'

/**
 * An outline as the rest of the core wants it: no repeated points, positive, not crossing itself.
 * @param ring open or closed list, mm, of either sign
 * @returns the cleaned ring, its first point unchanged; or the problem
 *   `ring-too-few-points` {points}: fewer than three different points;
 *   `ring-no-area` {}: all points on one line, or an area below SLIVER_AREA_MM2;
 *   `ring-crosses-itself` {edgeA, edgeB}: each edge named by the index, in the given list, of the point that it starts at
 *   (the first one, if that is repeated). What counts as crossing is said in `ringSelfCrossing`.
 * Points nearer than JOIN_TOLERANCE_MM to the one kept before them are repeats.
 * Rules: GEO-4.
 */
export function normaliseOutline<P extends Point>(ring: Ring<P>): Result<Ring<P>> {
  const kept = indicesWithoutRepeats(ring)
  if (kept.length < 3) return problem('ring-too-few-points', { points: kept.length })
  const clean = kept.map((i) => itemAt(ring, i))
  if (isOnOneLine(clean)) return problem('ring-no-area')
  const crossing = ringSelfCrossing(clean)
  if (crossing !== null)
    return problem('ring-crosses-itself', {
      edgeA: itemAt(kept, crossing.a),
      edgeB: itemAt(kept, crossing.b),
    })
  const areaMm2 = ringAreaMm2(clean)
  if (Math.abs(areaMm2) < SLIVER_AREA_MM2) return problem('ring-no-area')
  return ok(areaMm2 > 0 ? clean : reverseRing(clean))
}

function indicesWithoutRepeats(ring: Ring): readonly number[] {
  const kept: number[] = []
  const isRepeat = (i: number, j: number | undefined): boolean =>
    j !== undefined && pointDistanceMm(itemAt(ring, i), itemAt(ring, j)) < JOIN_TOLERANCE_MM
  ring.forEach((_, i) => {
    if (!isRepeat(i, kept.at(-1))) kept.push(i)
  })
  while (kept.length > 1 && isRepeat(itemAt(kept, 0), kept.at(-1))) kept.pop()
  return kept
}

function isOnOneLine(points: Ring): boolean {
  const [first, second] = [itemAt(points, 0), itemAt(points, 1)]
  return points.every((p) => turnOf(first, second, p) === 0)
}
