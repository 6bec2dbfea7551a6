import type { Bounds } from '../../../core/geometry'
import type { SlabWindow } from '../../../core/photo'
import { type Camera, type Size, visibleBounds } from '../view'

/** No bitmap is made larger than this on its longer side, px: it would take long and much memory. */
export const GREATEST_BITMAP_PX = 4096
/** The first small picture of a photo, and of the slab from above. */
export const PREVIEW_PX = 2048
/** What is this near to sharp stays: another picture would not look better. */
const SHARP_ENOUGH = 1.15

export interface CropRequest {
  readonly area: Bounds
  readonly outWidthPx: number
  readonly outHeightPx: number
}

const intersection = (a: Bounds, b: Bounds): Bounds | null => {
  const both = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  }
  return both.minX < both.maxX && both.minY < both.maxY ? both : null
}

const longerSide = ({ minX, minY, maxX, maxY }: Bounds): number => Math.max(maxX - minX, maxY - minY)

export const isWithin = (inner: Bounds, outer: Bounds): boolean =>
  inner.minX >= outer.minX && inner.minY >= outer.minY && inner.maxX <= outer.maxX && inner.maxY <= outer.maxY

/**
 * The crop that makes the photo sharp on screen; null when the preview is as sharp.
 * @param pixelRatio device px per CSS px
 */
export function cropForView(
  photo: { readonly widthPx: number; readonly heightPx: number },
  camera: Camera,
  size: Size,
  pixelRatio: number,
): CropRequest | null {
  const whole = { minX: 0, minY: 0, maxX: photo.widthPx, maxY: photo.heightPx }
  const visible = intersection(visibleBounds(camera, size), whole)
  const previewScale = Math.min(1, PREVIEW_PX / longerSide(whole))
  // More than one pixel drawn for each one taken adds nothing.
  const wantedScale = Math.min(1, camera.scale * pixelRatio)
  if (!visible || wantedScale <= previewScale * SHARP_ENOUGH) return null
  const area = {
    minX: Math.floor(visible.minX),
    minY: Math.floor(visible.minY),
    maxX: Math.ceil(visible.maxX),
    maxY: Math.ceil(visible.maxY),
  }
  const scale = Math.min(wantedScale, GREATEST_BITMAP_PX / longerSide(area))
  return {
    area,
    outWidthPx: Math.max(1, Math.round(scale * (area.maxX - area.minX))),
    outHeightPx: Math.max(1, Math.round(scale * (area.maxY - area.minY))),
  }
}

/** Round the slab, so that its surroundings show a little, as a share of its longer side. */
const SURROUNDINGS_SHARE = 0.06

/** The window for the small picture of the whole slab from above. */
export function wholeWindow(slab: Bounds): SlabWindow {
  const grow = SURROUNDINGS_SHARE * longerSide(slab)
  return windowOf(
    { minX: slab.minX - grow, minY: slab.minY - grow, maxX: slab.maxX + grow, maxY: slab.maxY + grow },
    (longerSide(slab) + 2 * grow) / PREVIEW_PX,
  )
}

const windowOf = ({ minX, minY, maxX, maxY }: Bounds, mmPerPx: number): SlabWindow => ({
  minXMm: minX,
  minYMm: minY,
  maxXMm: maxX,
  maxYMm: maxY,
  mmPerPx,
})

/**
 * The window that makes the slab from above sharp on screen; null when the small picture is as sharp.
 * @param photoPxPerMm what the photo can give
 */
export function windowForView(
  slab: Bounds,
  camera: Camera,
  size: Size,
  pixelRatio: number,
  photoPxPerMm: number,
): SlabWindow | null {
  const small = wholeWindow(slab)
  const whole = { minX: small.minXMm, minY: small.minYMm, maxX: small.maxXMm, maxY: small.maxYMm }
  const visible = intersection(visibleBounds(camera, size), whole)
  const wantedPxPerMm = Math.min(camera.scale * pixelRatio, photoPxPerMm)
  if (!visible || wantedPxPerMm * small.mmPerPx <= SHARP_ENOUGH) return null
  return windowOf(visible, Math.max(1 / wantedPxPerMm, longerSide(visible) / GREATEST_BITMAP_PX))
}
