import type { Point } from '../geometry'
import type { Adjustment } from './adjustment'
import { type ScaleProblem, scaleProblem } from './scaleInput'
import type { KnownLength, ScaleNetwork } from './scaleNetwork'

/** A distance is suspected when leaving it out takes this much off Σ(residual/sd)²: 1 in 1 800 by chance (χ², 1). */
const SUSPICION = 12
/** Suspects whose Σ differ by less cannot be told apart: odds below about 20 to 1. */
const TELL_APART = 2

/**
 * Taped distances that do not fit the rest, by name.
 *
 * Four marks with six distances have one to spare, so the distances alone can say *that* one is wrong but not which:
 * without any one of them the other five fit exactly. The photo decides: without the right one the marks' places agree
 * with a camera of a plausible focal length whose axis meets the picture's middle; without a wrong one they do not.
 * @param adjustWithout the adjustment of all but some lengths; null when they no longer fix the marks
 * Method: leave one out; fall of the cost against χ². Rules: PHO-10.
 */
export function disagreeingDistances(
  network: ScaleNetwork,
  cost: number,
  redundancy: number,
  adjustWithout: (lengths: readonly KnownLength[]) => Adjustment | null,
): readonly ScaleProblem[] {
  if (redundancy < 1 || cost < SUSPICION) return []
  const suspects = network.lengths
    .flatMap((length) => {
      if (length.distanceId === null) return []
      const without = adjustWithout(network.lengths.filter((l) => l !== length))
      if (without === null || cost - without.cost < SUSPICION) return []
      return [
        {
          length,
          id: length.distanceId,
          cost: without.cost,
          solvedMm: solvedLengthMm(network, without, length),
        },
      ]
    })
    .sort((p, q) => p.cost - q.cost)
  const best = suspects[0]
  if (!best) return []
  const alike = suspects.filter((s) => s.cost - best.cost < TELL_APART)
  const values = {
    tapedMm: best.length.lengthMm,
    solvedMm: best.solvedMm,
    differenceMm: best.length.lengthMm - best.solvedMm,
    count: alike.length,
  }
  const code = alike.length === 1 ? 'distance-disagrees' : 'distances-disagree'
  return [scaleProblem(code, 'warning', { values, distanceIds: alike.map((s) => s.id) })]
}

function solvedLengthMm(network: ScaleNetwork, adjustment: Adjustment, { a, b }: KnownLength): number {
  const p: Point = adjustment.marks[a] ?? [0, 0]
  const q: Point = adjustment.marks[b] ?? [0, 0]
  return Math.hypot(
    p[0] - q[0],
    p[1] - q[1],
    (network.marks[a]?.heightMm ?? 0) - (network.marks[b]?.heightMm ?? 0),
  )
}
