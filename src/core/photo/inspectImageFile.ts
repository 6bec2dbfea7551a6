import { ok, problem, type Result } from '../units'
import { byteReader, type ByteReader, type ImageStructure } from './fileBytes'
import { exifFacts } from './fileExif'
import { isJpeg, jpegStructure } from './fileJpeg'
import { isPng, pngStructure } from './filePng'
import { isWebp, webpStructure } from './fileWebp'

export type ImageMediaType = 'image/jpeg' | 'image/png' | 'image/webp'

export interface ImageFileFacts {
  readonly mediaType: ImageMediaType
  /** As seen with the orientation honoured. */
  readonly widthPx: number
  readonly heightPx: number
  readonly storedWidthPx: number
  readonly storedHeightPx: number
  /** EXIF orientation, 1 to 8. */
  readonly orientation: number
  readonly megapixels: number
  readonly focalLength35mm: number | null
  readonly hasLocation: boolean
}

/** Photos up to this size are worked at full resolution; a reduced copy is offered above. */
export const MOST_MEGAPIXELS = 50

/**
 * What a file says of itself, without decoding it.
 * @param bytes the whole file
 * @returns the facts; problems `photo-empty`, `photo-not-an-image`, `photo-unsupported` {format}, `photo-truncated`,
 *          `photo-too-large` {megapixels, widthPx, heightPx, mostMegapixels}
 * Rules: PHO-12.
 */
export function inspectImageFile(bytes: Uint8Array): Result<ImageFileFacts> {
  if (bytes.length === 0) return problem('photo-empty')
  const mediaType = mediaTypeOf(byteReader(bytes))
  if (mediaType === null) return refuseFormat(byteReader(bytes))
  const structure = structureOf(bytes, mediaType)
  const { storedWidthPx, storedHeightPx } = structure
  const facts = exifFacts(structure.exif)
  const onItsSide = facts.orientation >= 5
  const widthPx = onItsSide ? storedHeightPx : storedWidthPx
  const heightPx = onItsSide ? storedWidthPx : storedHeightPx
  const megapixels = (widthPx * heightPx) / 1e6
  if (!structure.complete) return problem('photo-truncated')
  if (megapixels > MOST_MEGAPIXELS) {
    return problem('photo-too-large', { megapixels, widthPx, heightPx, mostMegapixels: MOST_MEGAPIXELS })
  }
  return ok({
    mediaType,
    widthPx,
    heightPx,
    storedWidthPx,
    storedHeightPx,
    orientation: facts.orientation,
    megapixels,
    focalLength35mm: facts.focalLength35mm,
    hasLocation: facts.hasLocation || structure.locationElsewhere,
  })
}

export function mediaTypeOf(reader: ByteReader): ImageMediaType | null {
  if (isJpeg(reader)) return 'image/jpeg'
  if (isPng(reader)) return 'image/png'
  return isWebp(reader) ? 'image/webp' : null
}

export function structureOf(bytes: Uint8Array, mediaType: ImageMediaType): ImageStructure {
  if (mediaType === 'image/jpeg') return jpegStructure(bytes)
  return mediaType === 'image/png' ? pngStructure(bytes) : webpStructure(bytes)
}

/** Formats that people do send, told by their first bytes, so that the refusal can name them. */
function refuseFormat(reader: ByteReader): ReturnType<typeof problem> {
  const format = boxedFormat(reader) ?? plainFormat(reader)
  if (format !== null) return problem('photo-unsupported', { format })
  // The first bytes of a picture, and no more of it.
  const isStub = reader.length < 12 && (reader.byte(0) === 0xff || reader.byte(0) === 0x89)
  return problem(isStub ? 'photo-truncated' : 'photo-not-an-image')
}

function boxedFormat(reader: ByteReader): string | null {
  if (reader.text(4, 4) !== 'ftyp') return null
  const brand = reader.text(8, 4)
  if (/^(heic|heix|hevc|hevx|heim|heis|mif1|msf1)$/.test(brand)) return 'HEIC'
  if (/^avi[fs]$/.test(brand)) return 'AVIF'
  return 'video'
}

function plainFormat(reader: ByteReader): string | null {
  const first = reader.uint32(0)
  if (first === 0x47494638) return 'GIF'
  if (first === 0x49492a00 || first === 0x4d4d002a) return 'TIFF or camera raw'
  if (reader.uint16(0) === 0xff0a || first === 0x0000000c) return 'JPEG XL'
  if (reader.text(0, 5) === '%PDF-') return 'PDF'
  return reader.uint16(0) === 0x424d ? 'BMP' : null
}
