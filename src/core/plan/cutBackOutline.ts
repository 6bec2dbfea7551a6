import { offsetRegions, regionAreaMm2, type Ring, type SlabPoint } from '../geometry'
import { type Issue, issueOf, type PlanPath } from './issue'
import { blockedBy, type Found, ready } from './part'
import type { Trace } from './schema'

/**
 * What is left of the slab once decayed wood is cut back all along its edge: every place at least the allowance inside
 * the traced line.
 * @returns the largest part where it falls apart (with a warning), blocked where nothing is left
 * Rules: PLN-12.
 */
export function cutBackOutline(
  traced: Ring<SlabPoint>,
  { meaning }: Trace,
  at: PlanPath,
): Found<Ring<SlabPoint>> {
  const cutBackMm = meaning.kind === 'outline' ? (meaning.cutBackMm ?? 0) : 0
  if (cutBackMm === 0) return ready(traced)
  const left = offsetRegions([{ outer: traced, holes: [] }], -cutBackMm, 'round')
  const [largest, ...others] = left.toSorted((a, b) => regionAreaMm2(b) - regionAreaMm2(a))
  if (largest === undefined) return blockedBy([issueOf('outline-cut-away', 'blocker', at, { cutBackMm })])
  const leftAreaMm2 = regionAreaMm2(largest)
  const issues: readonly Issue[] =
    others.length > 0 ? [issueOf('outline-cut-apart', 'warning', at, { cutBackMm, leftAreaMm2 })] : []
  return ready(largest.outer, issues)
}
