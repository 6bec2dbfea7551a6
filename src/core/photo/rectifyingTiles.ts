import { applyHomography, composeHomographies, homographyWeight, type Homography } from './homography'
import { distortPx } from './camera'
import type { RectifyingTransform } from './rectify'

/** A part of a picture; whole pixels, corner-origin. */
export interface PixelArea {
  readonly xPx: number
  readonly yPx: number
  readonly widthPx: number
  readonly heightPx: number
}

/** One tile of the view from above with the part of the photo that it needs: bounded work and bounded memory. */
export interface RectifyingTile {
  readonly target: PixelArea
  /** The part of the photo to read, and the size to read it at. */
  readonly source: PixelArea & { readonly readWidthPx: number; readonly readHeightPx: number }
  /** For `rectifyInto` from what was read into a target of the tile's own size. */
  readonly transform: RectifyingTransform
}

/** A tile of this side takes a few ms to fill, so a worker can look at its messages between two. */
export const TILE_SIDE_PX = 256

/** Where the photo is far finer than the view, it is read smaller: at most this many pixels for one of the view, each way. */
const FINEST_READ = 2

/** Bilinear samples and rounding reach a little beyond what the corners say. */
const MARGIN_PX = 3

const SAMPLES = 9

/**
 * Cuts a view from straight above into tiles.
 * @returns the tiles that the photo shows something of; the others stay transparent
 * Rules: PHO-14.
 */
export function rectifyingTiles(
  transform: RectifyingTransform,
  photo: { readonly widthPx: number; readonly heightPx: number },
): readonly RectifyingTile[] {
  const tiles: RectifyingTile[] = []
  for (let yPx = 0; yPx < transform.heightPx; yPx += TILE_SIDE_PX) {
    for (let xPx = 0; xPx < transform.widthPx; xPx += TILE_SIDE_PX) {
      const target = {
        xPx,
        yPx,
        widthPx: Math.min(TILE_SIDE_PX, transform.widthPx - xPx),
        heightPx: Math.min(TILE_SIDE_PX, transform.heightPx - yPx),
      }
      const tile = tileFor(target, transform, photo)
      if (tile !== null) tiles.push(tile)
    }
  }
  return tiles
}

function tileFor(
  target: PixelArea,
  transform: RectifyingTransform,
  photo: { readonly widthPx: number; readonly heightPx: number },
): RectifyingTile | null {
  const seen = seenArea(target, transform, photo)
  if (seen === null) return null
  const readWidthPx = Math.min(seen.widthPx, target.widthPx * FINEST_READ)
  const readHeightPx = Math.min(seen.heightPx, target.heightPx * FINEST_READ)
  // One scale for both ways: the lens bends alike in all directions. Enough for the finer of the two.
  const scale = Math.min(1, Math.max(readWidthPx / seen.widthPx, readHeightPx / seen.heightPx))
  const source = {
    ...seen,
    readWidthPx: Math.max(2, Math.round(seen.widthPx * scale)),
    readHeightPx: Math.max(2, Math.round(seen.heightPx * scale)),
  }
  return { target, source, transform: tileTransform(target, source, transform) }
}

/** What of the photo a tile may need: the bounds of its mapped grid; all of it where the tile reaches the horizon. */
function seenArea(
  target: PixelArea,
  { photoFromTarget, lens }: RectifyingTransform,
  photo: { readonly widthPx: number; readonly heightPx: number },
): PixelArea | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  let hasHorizon = false
  for (let n = 0; n < SAMPLES * SAMPLES; n++) {
    const at = [
      target.xPx + (target.widthPx * (n % SAMPLES)) / (SAMPLES - 1),
      target.yPx + (target.heightPx * Math.floor(n / SAMPLES)) / (SAMPLES - 1),
    ] as const
    if (!(homographyWeight(photoFromTarget, at) > 0)) {
      hasHorizon = true
      continue
    }
    const [x, y] = distortPx(lens, applyHomography(photoFromTarget, at))
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  if (maxX === -Infinity) return null
  if (hasHorizon) [minX, minY, maxX, maxY] = [0, 0, photo.widthPx, photo.heightPx]
  const xPx = Math.max(0, Math.floor(minX) - MARGIN_PX)
  const yPx = Math.max(0, Math.floor(minY) - MARGIN_PX)
  const widthPx = Math.min(photo.widthPx, Math.ceil(maxX) + MARGIN_PX) - xPx
  const heightPx = Math.min(photo.heightPx, Math.ceil(maxY) + MARGIN_PX) - yPx
  return widthPx > 1 && heightPx > 1 ? { xPx, yPx, widthPx, heightPx } : null
}

/** The transform with both of its pictures moved to the tile's own corners, and the photo scaled as it was read. */
function tileTransform(
  target: PixelArea,
  source: RectifyingTile['source'],
  { photoFromTarget, lens }: RectifyingTransform,
): RectifyingTransform {
  const scaleX = source.readWidthPx / source.widthPx
  const scaleY = source.readHeightPx / source.heightPx
  const readFromPhoto: Homography = [
    scaleX,
    0,
    -scaleX * source.xPx,
    0,
    scaleY,
    -scaleY * source.yPx,
    0,
    0,
    1,
  ]
  const targetFromTile: Homography = [1, 0, target.xPx, 0, 1, target.yPx, 0, 0, 1]
  return {
    widthPx: target.widthPx,
    heightPx: target.heightPx,
    photoFromTarget: composeHomographies(readFromPhoto, composeHomographies(photoFromTarget, targetFromTile)),
    lens: {
      ...lens,
      focalPx: lens.focalPx * Math.sqrt(scaleX * scaleY),
      centrePx: [(lens.centrePx[0] - source.xPx) * scaleX, (lens.centrePx[1] - source.yPx) * scaleY],
    },
  }
}
