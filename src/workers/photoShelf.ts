import {
  boxRound,
  type ClickedThing,
  clicksOf,
  photoSharpness,
  type PhotoSharpness,
  type PixelArea,
  rectifyingTiles,
  rectifyInto,
  refineClicks,
  type RefinedClick,
  type RectifyingTransform,
  type RgbaImage,
  THUMB_SD_PX,
} from '../core/photo'
import { assertNever } from '../core/units'
import { type Breathe, JobFailed } from './jobQueue'
import type { PhotoAnswer, PhotoSize, PhotoTask, ReducedPhoto } from './protocol'

/** Largest view that is drawn in one piece: what its pixels take of memory, four bytes each, stays below 150 MB. */
const MOST_VIEW_PX = 36_000_000

/** As much of a photo as is looked at for sharpness. */
const MOST_SHARPNESS_PX = 12_000_000

const JPEG_QUALITY = 0.92

/** A photo that only just exceeds what is kept would be blurred for nothing by odd factors; a whole pixel is left out. */
const fittingScale = (widthPx: number, heightPx: number, mostPx: number): number =>
  Math.min(1, Math.sqrt(mostPx / (widthPx * heightPx)))

const unsupported = (): JobFailed => new JobFailed({ code: 'photo-worker-unsupported', values: {} })

const unreadable = (): JobFailed => new JobFailed({ code: 'photo-unreadable', values: {} })

/** Upright, as the file's orientation says. */
async function decoded(bytes: Blob): Promise<ImageBitmap> {
  if (typeof OffscreenCanvas === 'undefined') throw unsupported()
  try {
    return await createImageBitmap(bytes, { imageOrientation: 'from-image' })
  } catch {
    throw unreadable()
  }
}

interface Pad {
  readonly canvas: OffscreenCanvas
  readonly context: OffscreenCanvasRenderingContext2D
}

/** @throws JobFailed when the browser has no memory for it */
function pad(widthPx: number, heightPx: number, isReadBack: boolean): Pad {
  const canvas = new OffscreenCanvas(widthPx, heightPx)
  const context = canvas.getContext('2d', { willReadFrequently: isReadBack })
  if (context === null) throw new JobFailed({ code: 'photo-no-memory', values: {} })
  context.imageSmoothingQuality = 'high'
  return { canvas, context }
}

function drawn(
  bitmap: ImageBitmap,
  area: PixelArea,
  widthPx: number,
  heightPx: number,
  isReadBack = false,
): Pad {
  const sheet = pad(widthPx, heightPx, isReadBack)
  sheet.context.drawImage(bitmap, area.xPx, area.yPx, area.widthPx, area.heightPx, 0, 0, widthPx, heightPx)
  return sheet
}

const wholeOf = (bitmap: ImageBitmap): PixelArea => ({
  xPx: 0,
  yPx: 0,
  widthPx: bitmap.width,
  heightPx: bitmap.height,
})

const sizeOf = (bitmap: ImageBitmap): PhotoSize => ({ widthPx: bitmap.width, heightPx: bitmap.height })

/** The photos whose pixels a worker holds, and what can be done with them. */
export class PhotoShelf {
  readonly #bitmaps = new Map<string, ImageBitmap>()

  async perform(task: PhotoTask, breathe: Breathe): Promise<PhotoAnswer> {
    switch (task.kind) {
      case 'open':
        return { kind: 'size', size: await this.#open(task.hash, task.bytes) }
      case 'preview':
        return { kind: 'bitmap', bitmap: this.#preview(this.#photo(task.hash), task.maxSidePx) }
      case 'crop':
        return {
          kind: 'bitmap',
          bitmap: drawn(
            this.#photo(task.hash),
            task.area,
            task.outWidthPx,
            task.outHeightPx,
          ).canvas.transferToImageBitmap(),
        }
      case 'rectify':
        return {
          kind: 'bitmap',
          bitmap: await rectified(this.#photo(task.hash), task.transform, breathe),
        }
      case 'refine':
        return { kind: 'refined', clicks: refined(this.#photo(task.hash), task.thing) }
      case 'sharpness':
        return { kind: 'sharpness', sharpness: sharpnessOf(this.#photo(task.hash)) }
      case 'reduce':
        return { kind: 'reduced', photo: await reduced(task.bytes, task.mostMegapixels) }
      case 'close':
        this.#bitmaps.get(task.hash)?.close()
        this.#bitmaps.delete(task.hash)
        return { kind: 'closed' }
      default:
        return assertNever(task)
    }
  }

  async #open(hash: string, bytes: Blob): Promise<PhotoSize> {
    const known = this.#bitmaps.get(hash)
    if (known !== undefined) return sizeOf(known)
    const bitmap = await decoded(bytes)
    this.#bitmaps.get(hash)?.close()
    this.#bitmaps.set(hash, bitmap)
    return sizeOf(bitmap)
  }

  #photo(hash: string): ImageBitmap {
    const bitmap = this.#bitmaps.get(hash)
    if (bitmap === undefined) throw new JobFailed({ code: 'photo-not-open', values: {} })
    return bitmap
  }

  #preview(bitmap: ImageBitmap, maxSidePx: number): ImageBitmap {
    const scale = Math.min(1, maxSidePx / Math.max(bitmap.width, bitmap.height))
    const widthPx = Math.max(1, Math.round(bitmap.width * scale))
    const heightPx = Math.max(1, Math.round(bitmap.height * scale))
    return drawn(bitmap, wholeOf(bitmap), widthPx, heightPx).canvas.transferToImageBitmap()
  }
}

/** Tile by tile, with a look at the messages between two of them. */
async function rectified(
  bitmap: ImageBitmap,
  transform: RectifyingTransform,
  breathe: Breathe,
): Promise<ImageBitmap> {
  if (transform.widthPx * transform.heightPx > MOST_VIEW_PX) {
    throw new JobFailed({ code: 'photo-view-too-large', values: {} })
  }
  const view = pad(transform.widthPx, transform.heightPx, false)
  const tiles = rectifyingTiles(transform, sizeOf(bitmap))
  for (const [n, tile] of tiles.entries()) {
    await breathe(n / tiles.length)
    const { readWidthPx, readHeightPx } = tile.source
    const sheet = drawn(bitmap, tile.source, readWidthPx, readHeightPx, true)
    const { data } = sheet.context.getImageData(0, 0, readWidthPx, readHeightPx)
    const source: RgbaImage = { data, widthPx: readWidthPx, heightPx: readHeightPx }
    const picture = new ImageData(tile.target.widthPx, tile.target.heightPx)
    const target: RgbaImage = {
      data: picture.data,
      widthPx: tile.target.widthPx,
      heightPx: tile.target.heightPx,
    }
    rectifyInto(source, target, tile.transform, { from: 0, to: target.heightPx })
    view.context.putImageData(picture, tile.target.xPx, tile.target.yPx)
  }
  return view.canvas.transferToImageBitmap()
}

/** Looked at in the middle: as much of it as can be read at once, at full resolution. */
function sharpnessOf(bitmap: ImageBitmap): PhotoSharpness {
  const share = fittingScale(bitmap.width, bitmap.height, MOST_SHARPNESS_PX)
  const widthPx = Math.floor(bitmap.width * share)
  const heightPx = Math.floor(bitmap.height * share)
  const xPx = Math.floor((bitmap.width - widthPx) / 2)
  const yPx = Math.floor((bitmap.height - heightPx) / 2)
  const { context } = drawn(bitmap, { xPx, yPx, widthPx, heightPx }, widthPx, heightPx, true)
  const { data } = context.getImageData(0, 0, widthPx, heightPx)
  return photoSharpness({ data, widthPx, heightPx, leftPx: xPx, topPx: yPx })
}

/** A photo of which so large a part cannot be read at once leaves the clicks where they are. */
function refined(bitmap: ImageBitmap, thing: ClickedThing): readonly RefinedClick[] {
  const box = boxRound(thing, sizeOf(bitmap))
  if (box === null) return clicksOf(thing).map((px) => ({ px, sure: false, sdPx: THUMB_SD_PX }))
  const { xPx, yPx, widthPx, heightPx } = box
  const { context } = drawn(bitmap, box, widthPx, heightPx, true)
  const { data } = context.getImageData(0, 0, widthPx, heightPx)
  return refineClicks({ data, widthPx, heightPx, leftPx: xPx, topPx: yPx }, thing)
}

async function reduced(bytes: Blob, mostMegapixels: number): Promise<ReducedPhoto> {
  const bitmap = await decoded(bytes)
  try {
    const scale = fittingScale(bitmap.width, bitmap.height, mostMegapixels * 1e6)
    const widthPx = Math.max(1, Math.floor(bitmap.width * scale))
    const heightPx = Math.max(1, Math.floor(bitmap.height * scale))
    const { canvas } = drawn(bitmap, wholeOf(bitmap), widthPx, heightPx)
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY })
    return { blob, widthPx, heightPx }
  } finally {
    bitmap.close()
  }
}
