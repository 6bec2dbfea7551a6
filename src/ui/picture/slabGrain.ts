import { ringBounds } from '../../core/geometry'
import { rectifyingTransform, type SlabWindow } from '../../core/photo'
import type { PlanResult, Slab } from '../../core/plan'
import { getPhotoBytes } from '../../state/planFiles'
import { readyValue } from '../readyValue'
import { withPictureClient } from './pictureClient'

/** The slab from straight above, and where it lies in the slab's frame. */
export interface SlabGrain {
  readonly bitmap: ImageBitmap
  readonly window: SlabWindow
}

/** Longest side of a rectified picture, px: the memory of a phone ends somewhere beyond. */
const MOST_PX = 6000

/**
 * Draws a slab from straight above, in the photo's worker.
 * @returns null when its photo is not here or its scale is not known; the caller closes the bitmap
 */
export async function slabGrain(
  { slab, hash }: { readonly slab: Slab; readonly hash: string },
  result: PlanResult,
  mmPerPx: number,
  signal: AbortSignal,
): Promise<SlabGrain | null> {
  const own = result.slabs.get(slab.id)
  const scale = readyValue(own?.scale)
  const shape = readyValue(own?.shape)
  if (!scale || !shape) return null
  const { minX, minY, maxX, maxY } = ringBounds(shape.outline)
  const perPx = Math.max(mmPerPx, (maxX - minX) / MOST_PX, (maxY - minY) / MOST_PX)
  const window = { minXMm: minX, minYMm: minY, maxXMm: maxX, maxYMm: maxY, mmPerPx: perPx }
  return withPictureClient(async (client) => {
    if (signal.aborted) return null
    if (!client.isOpen(hash)) {
      const bytes = await getPhotoBytes(hash)
      if (bytes === null) return null
      await client.open(hash, bytes)
    }
    const bitmap = await client.rectify(hash, rectifyingTransform(scale.frame, window), { signal })
    return { bitmap, window }
  })
}
