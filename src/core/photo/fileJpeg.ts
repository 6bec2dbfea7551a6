import { byteReader, type ByteReader, type FilePart, type ImageStructure } from './fileBytes'

const EXIF_HEAD = 'Exif\0\0'
const COLOUR_PROFILE_HEAD = 'ICC_PROFILE\0'
const [APP0, APP1, APP2, APP14, COMMENT, SCAN_START, END] = [0xe0, 0xe1, 0xe2, 0xee, 0xfe, 0xda, 0xd9]

export const isJpeg = (reader: ByteReader): boolean => reader.uint16(0) === 0xffd8 && reader.byte(2) === 0xff

interface JpegSegment extends FilePart {
  readonly marker: number
}

/**
 * Walks a JPEG's segments. What follows the end mark (a second picture, a film clip) is not kept.
 * Source: ITU-T T.81, annex B; application segments by JFIF 1.02 and EXIF 2.32 (from memory).
 */
export function jpegStructure(bytes: Uint8Array): ImageStructure {
  const reader = byteReader(bytes)
  const segments = jpegSegments(bytes, reader)
  const frame = segments.find((s) => isFrameHeader(s.marker))
  const storedWidthPx = frame ? reader.uint16(frame.start + 7) : 0
  const storedHeightPx = frame ? reader.uint16(frame.start + 5) : 0
  const application = segments.filter((s) => s.marker === APP1)
  const exif = application.find((s) => reader.text(s.start + 4, 6) === EXIF_HEAD)
  return {
    storedWidthPx,
    storedHeightPx,
    exif: exif ? reader.slice(exif.start + 10, exif.end) : null,
    locationElsewhere: application.some(
      (s) => s !== exif && /GPS(Lat|Long)/.test(reader.text(s.start, s.end - s.start)),
    ),
    parts: [{ start: 0, end: 2, keep: true }, ...segments],
    complete: segments.at(-1)?.marker === END && storedWidthPx > 0 && storedHeightPx > 0,
  }
}

/** Up to the end mark, or as far as the file is whole. */
function jpegSegments(bytes: Uint8Array, reader: ByteReader): readonly JpegSegment[] {
  const segments: JpegSegment[] = []
  let at = 2
  while (reader.has(at, 2) && reader.byte(at) === 0xff) {
    const marker = reader.byte(at + 1)
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker === END) return [...segments, { start: at, end: at + 2, keep: true, marker }]
    const end = at + 2 + reader.uint16(at + 2)
    if (!reader.has(at, end - at) || end < at + 4) break
    const next = marker === SCAN_START ? endOfScan(bytes, end) : end
    segments.push({ start: at, end: next, keep: isKept(marker, reader, at), marker })
    at = next
  }
  return segments
}

/** SOF0 to SOF15 without the three that share their range: Huffman tables, reserved, arithmetic conditioning. */
const isFrameHeader = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc

/** Application segments and comments go, but for JFIF's density, the colour profile and Adobe's colour transform. */
function isKept(marker: number, reader: ByteReader, at: number): boolean {
  if (marker === COMMENT) return false
  if (marker < APP0 || marker > 0xef) return true
  if (marker === APP0) return reader.text(at + 4, 4) === 'JFIF'
  if (marker === APP2) return reader.text(at + 4, COLOUR_PROFILE_HEAD.length) === COLOUR_PROFILE_HEAD
  return marker === APP14
}

/** Entropy-coded data runs to the next marker that is neither a stuffed zero nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = bytes.indexOf(0xff, from)
  while (at >= 0 && at + 1 < bytes.length) {
    const next = bytes[at + 1] ?? 0
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7) && next !== 0xff) return at
    at = bytes.indexOf(0xff, at + 1)
  }
  return bytes.length
}

/** An APP1 segment around a TIFF block. */
export function jpegExifSegment(tiff: Uint8Array): Uint8Array {
  const segment = new Uint8Array(10 + tiff.length)
  const view = new DataView(segment.buffer)
  view.setUint16(0, 0xffe1)
  view.setUint16(2, 8 + tiff.length)
  segment.set(
    Array.from(EXIF_HEAD, (c) => c.charCodeAt(0)),
    4,
  )
  segment.set(tiff, 10)
  return segment
}
