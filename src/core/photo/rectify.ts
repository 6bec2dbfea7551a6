import { InvariantError } from '../units'
import { type Lens, homographyOfCamera } from './camera'
import { composeHomographies, type Homography } from './homography'
import type { SlabFrame } from './slabFrame'

/** Pixels of a picture: RGBA, row by row. */
export interface RgbaImage {
  readonly data: Uint8ClampedArray
  readonly widthPx: number
  readonly heightPx: number
}

/** How to draw a window of the slab from straight above: plain data for the worker. */
export interface RectifyingTransform {
  readonly widthPx: number
  readonly heightPx: number
  /** Pixel of the target (corner-origin) → undistorted pixel of the photo. */
  readonly photoFromTarget: Homography
  readonly lens: Lens
}

export interface SlabWindow {
  readonly minXMm: number
  readonly minYMm: number
  readonly maxXMm: number
  readonly maxYMm: number
  readonly mmPerPx: number
}

/**
 * The map for a view from straight above of a window in the slab frame, upright and true to scale.
 * @throws InvariantError when the window has no area
 * The face is taken as flat: where it is known to bow, edges shift by what `planePointFromPx` says. Rules: PHO-14.
 */
export function rectifyingTransform(frame: SlabFrame, window: SlabWindow): RectifyingTransform {
  const widthPx = Math.round((window.maxXMm - window.minXMm) / window.mmPerPx)
  const heightPx = Math.round((window.maxYMm - window.minYMm) / window.mmPerPx)
  if (!(widthPx > 0 && heightPx > 0)) throw new InvariantError('an empty window', { ...window })
  const slabFromTarget: Homography = [
    window.mmPerPx,
    0,
    window.minXMm,
    0,
    window.mmPerPx,
    window.minYMm,
    0,
    0,
    1,
  ]
  return {
    widthPx,
    heightPx,
    photoFromTarget: composeHomographies(undistortedFromSlab(frame), slabFromTarget),
    lens: frame.camera.lens,
  }
}

/** Slab mm → undistorted pixels of the photo, for the flat plane. */
export function undistortedFromSlab({ camera, originMm, along, isMirrored }: SlabFrame): Homography {
  const seen = isMirrored === true ? -1 : 1
  const planeFromSlab: Homography = [
    along[0],
    -along[1],
    originMm[0],
    seen * along[1],
    seen * along[0],
    seen * originMm[1],
    0,
    0,
    1,
  ]
  return composeHomographies(homographyOfCamera(camera), planeFromSlab)
}

/**
 * Fills rows of the target from the photo, bilinear; what the photo does not show stays transparent.
 * @param rows first row and the one after the last, so that a worker can work in slices
 * Writes into `target.data` (the caller's own buffer). Rules: PHO-14.
 */
export function rectifyInto(
  source: RgbaImage,
  target: RgbaImage,
  transform: RectifyingTransform,
  rows: { readonly from: number; readonly to: number },
): void {
  const [a, b, c, d, e, f, g, h, i] = transform.photoFromTarget
  const { focalPx, centrePx, k1, k2 } = transform.lens
  const [cx, cy] = centrePx
  const inverseFocal = 1 / focalPx
  for (let row = rows.from; row < rows.to; row++) {
    const y = row + 0.5
    const [uRow, vRow, wRow] = [b * y + c, e * y + f, h * y + i]
    let out = row * target.widthPx * 4
    for (let col = 0; col < target.widthPx; col++, out += 4) {
      const x = col + 0.5
      const weight = g * x + wRow
      // Behind the camera, or where the lens's polynomial has folded back on itself: nothing to see.
      const w = weight > 0 ? 1 / weight : Number.NaN
      const un = (a * x + uRow) * w - cx
      const vn = (d * x + vRow) * w - cy
      const rr = (un * un + vn * vn) * inverseFocal * inverseFocal
      const bowed = 1 + rr * (3 * k1 + 5 * rr * k2) > 0 ? 1 + rr * (k1 + rr * k2) : Number.NaN
      sampleInto(target.data, out, source, un * bowed + cx - 0.5, vn * bowed + cy - 0.5)
    }
  }
}

/** One bilinear sample; (u, v) counts from the centre of the first pixel. */
function sampleInto(out: Uint8ClampedArray, at: number, source: RgbaImage, u: number, v: number): void {
  if (!(u >= 0 && v >= 0 && u < source.widthPx - 1 && v < source.heightPx - 1)) {
    out[at + 3] = 0
    return
  }
  const left = Math.trunc(u)
  const top = Math.trunc(v)
  const p = (top * source.widthPx + left) * 4
  const q = p + source.widthPx * 4
  out[at] = blended(source.data, p, q, u - left, v - top)
  out[at + 1] = blended(source.data, p + 1, q + 1, u - left, v - top)
  out[at + 2] = blended(source.data, p + 2, q + 2, u - left, v - top)
  out[at + 3] = 255
}

/** Between the two neighbours at p (and the pixel right of it) and the two below at q. */
function blended(data: Uint8ClampedArray, p: number, q: number, fx: number, fy: number): number {
  const above = (data[p] ?? 0) * (1 - fx) + (data[p + 4] ?? 0) * fx
  const below = (data[q] ?? 0) * (1 - fx) + (data[q + 4] ?? 0) * fx
  return above * (1 - fy) + below * fy
}
