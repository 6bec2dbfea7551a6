import { InvariantError } from '../units'
import { byteReader, joinBytes } from './fileBytes'
import { exifFacts, minimalExif } from './fileExif'
import { jpegExifSegment } from './fileJpeg'
import { pngExifChunk } from './filePng'
import { webpRebuilt } from './fileWebp'
import { mediaTypeOf, structureOf } from './inspectImageFile'

/**
 * The same picture without anything that tells where, when or by whom it was taken.
 * @param bytes a file that `inspectImageFile` accepts
 * @returns pixels byte for byte, the colour profile, and of the EXIF only orientation and focal length; EXIF, XMP,
 *          IPTC, comments, text, time and whatever follows the picture's end are dropped
 * @throws InvariantError for a file of another kind
 * Rules: PHO-13.
 */
export function withoutLocation(bytes: Uint8Array): Uint8Array {
  const mediaType = mediaTypeOf(byteReader(bytes))
  if (mediaType === null) throw new InvariantError('not an image that was accepted')
  const structure = structureOf(bytes, mediaType)
  const exif = minimalExif(exifFacts(structure.exif))
  const kept = structure.parts.filter((p) => p.keep).map((p) => bytes.subarray(p.start, p.end))
  if (mediaType === 'image/webp') return webpRebuilt(joinBytes(kept), exif)
  if (exif === null) return joinBytes(kept)
  // Behind the file's head: a JPEG's start mark and JFIF segment, a PNG's signature and IHDR.
  const head = mediaType === 'image/png' || isJfif(kept[1]) ? 2 : 1
  const block = mediaType === 'image/png' ? pngExifChunk(exif) : jpegExifSegment(exif)
  return joinBytes([...kept.slice(0, head), block, ...kept.slice(head)])
}

const isJfif = (part: Uint8Array | undefined): boolean =>
  part !== undefined && part[0] === 0xff && part[1] === 0xe0
