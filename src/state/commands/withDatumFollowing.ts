import type { Plan, Slab } from '../../core/plan'
import type { PxPoint } from '../../core/geometry'
import { sameData } from '../sameData'

/**
 * The slab with its datum's end on a mark that has just been moved. Only as long as nothing is laid on the wood: after
 * that the datum is a line on the wood, and what is measured from it must not shift because a mark is clicked better.
 */
export function withDatumFollowing(
  plan: Plan,
  slab: Slab,
  moved: { readonly photoId: string; readonly fromPx: PxPoint; readonly toPx: PxPoint },
): Slab {
  const { capture } = slab
  if (capture.kind !== 'photo' || capture.datum === null) return slab
  const { datum } = capture
  const isLaidOn = plan.options.some(
    ({ footprint, pieces }) =>
      footprint?.slabId === slab.id || pieces.some(({ slabId }) => slabId === slab.id),
  )
  if (isLaidOn || datum.photoId !== moved.photoId) return slab
  const followed = (end: PxPoint): PxPoint => (sameData(end, moved.fromPx) ? moved.toPx : end)
  const [fromPx, toPx] = [followed(datum.fromPx), followed(datum.toPx)]
  if (fromPx === datum.fromPx && toPx === datum.toPx) return slab
  return sameData(fromPx, toPx)
    ? slab
    : { ...slab, capture: { ...capture, datum: { ...datum, fromPx, toPx } } }
}
