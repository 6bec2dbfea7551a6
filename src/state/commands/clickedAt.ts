import type { PxPoint } from '../../core/geometry'
import type { Photo } from '../../core/plan'

/** A mark as it has just been clicked in a photo: nobody has looked at the pixels round it yet. */
export const clickedAt = (
  markId: string,
  atPx: PxPoint,
  sdPx: number | undefined,
): Photo['observations'][number] => ({ markId, atPx, sdPx: sdPx ?? null, refinement: { kind: 'none' } })
