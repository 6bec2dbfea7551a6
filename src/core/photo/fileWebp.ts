import { byteReader, type ByteReader, type FilePart, type ImageStructure } from './fileBytes'

export const isWebp = (reader: ByteReader): boolean =>
  reader.text(0, 4) === 'RIFF' && reader.text(8, 4) === 'WEBP'

const [EXIF_FLAG, XMP_FLAG] = [0x08, 0x04]
const FILE_HEAD_LENGTH = 12

/** Walks a WebP's chunks. Source: WebP container specification, RFC 9649, section 2 (from memory). */
export function webpStructure(bytes: Uint8Array): ImageStructure {
  const reader = byteReader(bytes)
  const parts: FilePart[] = [{ start: 0, end: FILE_HEAD_LENGTH, keep: true }]
  const size = { width: 0, height: 0 }
  let exif: Uint8Array | null = null
  let locationElsewhere = false
  const due = 8 + reader.uint32(4, true)
  let at = FILE_HEAD_LENGTH
  while (at + 8 <= due && reader.has(at, 8)) {
    const type = reader.text(at, 4)
    const length = reader.uint32(at + 4, true)
    const end = at + 8 + length + (length % 2)
    if (!reader.has(at, 8 + length)) break
    if (size.width === 0) Object.assign(size, sizeFrom(reader, type, at + 8))
    if (type === 'EXIF') exif = withoutJpegHead(reader.slice(at + 8, at + 8 + length))
    if (type === 'XMP ')
      locationElsewhere = /GPS(Lat|Long)/.test(reader.text(at + 8, Math.min(length, 60_000)))
    parts.push({ start: at, end: Math.min(end, reader.length), keep: type !== 'EXIF' && type !== 'XMP ' })
    at = end
  }
  return {
    storedWidthPx: size.width,
    storedHeightPx: size.height,
    exif,
    locationElsewhere,
    parts,
    complete: size.width > 0 && at >= due && reader.length >= due,
  }
}

function sizeFrom(reader: ByteReader, type: string, at: number): { width: number; height: number } {
  const uint24 = (offset: number): number => reader.uint16(offset, true) + (reader.byte(offset + 2) << 16)
  if (type === 'VP8X') return { width: 1 + uint24(at + 4), height: 1 + uint24(at + 7) }
  if (type === 'VP8 ') {
    return { width: reader.uint16(at + 6, true) & 0x3fff, height: reader.uint16(at + 8, true) & 0x3fff }
  }
  if (type === 'VP8L') {
    const bits = reader.uint32(at + 1, true)
    return { width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) }
  }
  return { width: 0, height: 0 }
}

/** Some writers put the head of a JPEG's EXIF segment before the block. */
const withoutJpegHead = (block: Uint8Array): Uint8Array =>
  byteReader(block).text(0, 4) === 'Exif' ? block.subarray(6) : block

/** The file of the kept parts, with the minimal EXIF (if any) at its end, flags and length put right. */
export function webpRebuilt(kept: Uint8Array, tiff: Uint8Array | null): Uint8Array {
  const extended = byteReader(kept).text(FILE_HEAD_LENGTH, 4) === 'VP8X'
  const exif = extended && tiff !== null ? tiff : null
  const file = new Uint8Array(kept.length + (exif === null ? 0 : 8 + exif.length + (exif.length % 2)))
  const view = new DataView(file.buffer)
  file.set(kept)
  if (exif !== null) {
    file.set([0x45, 0x58, 0x49, 0x46], kept.length)
    view.setUint32(kept.length + 4, exif.length, true)
    file.set(exif, kept.length + 8)
  }
  if (extended) {
    const flags = view.getUint8(FILE_HEAD_LENGTH + 8) & ~(EXIF_FLAG | XMP_FLAG)
    view.setUint8(FILE_HEAD_LENGTH + 8, exif === null ? flags : flags | EXIF_FLAG)
  }
  view.setUint32(4, file.length - 8, true)
  return file
}
