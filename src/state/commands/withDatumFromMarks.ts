import type { Slab } from '../../core/plan'
import { sameData } from '../sameData'

/** Gives the slab a datum through the first two marks of its first photo, unless it has one already. */
export function withDatumFromMarks(slab: Slab): Slab {
  const { capture } = slab
  if (capture.kind !== 'photo' || capture.datum !== null) return slab
  for (const photo of capture.photos.slice(0, 1)) {
    const [first, ...others] = photo.observations
    const second = others.find((seen) => !sameData(seen.atPx, first?.atPx))
    if (first === undefined || second === undefined) continue
    const datum = { photoId: photo.id, fromPx: first.atPx, toPx: second.atPx }
    return { ...slab, capture: { ...capture, datum } }
  }
  return slab
}
