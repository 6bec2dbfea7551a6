import { byteReader, type ByteReader } from './fileBytes'

export interface ExifFacts {
  /** 1 to 8 as EXIF counts; 1 when absent or out of range. */
  readonly orientation: number
  readonly focalLength35mm: number | null
  readonly hasLocation: boolean
}

const ORIENTATION_TAG = 0x0112
const EXIF_IFD_TAG = 0x8769
const GPS_IFD_TAG = 0x8825
const FOCAL_35MM_TAG = 0xa405
const SHORT_TYPE = 3

/**
 * Orientation, focal length and whether a location is there, out of a TIFF block; damage reads as absent.
 * Source: EXIF 2.32 (CIPA DC-008), sections 4.6.3 to 4.6.6 (from memory).
 */
export function exifFacts(tiff: Uint8Array | null): ExifFacts {
  if (tiff === null || tiff.length < 8) return { orientation: 1, focalLength35mm: null, hasLocation: false }
  const reader = byteReader(tiff)
  const little = reader.text(0, 2) === 'II'
  const first = entriesOf(reader, reader.uint32(4, little), little)
  const exifAt = first.get(EXIF_IFD_TAG)
  const exif = exifAt === undefined ? new Map<number, number>() : entriesOf(reader, exifAt, little)
  const orientation = first.get(ORIENTATION_TAG) ?? 1
  const focal = exif.get(FOCAL_35MM_TAG) ?? 0
  return {
    orientation: orientation >= 1 && orientation <= 8 ? orientation : 1,
    focalLength35mm: focal > 0 ? focal : null,
    hasLocation: first.has(GPS_IFD_TAG),
  }
}

/** Tags of one directory with their value (of shorts and longs) or offset (of everything else). */
function entriesOf(reader: ByteReader, at: number, little: boolean): Map<number, number> {
  const entries = new Map<number, number>()
  const count = reader.uint16(at, little)
  for (let i = 0; i < count; i++) {
    const entry = at + 2 + 12 * i
    if (!reader.has(entry, 12)) break
    const isShort = reader.uint16(entry + 2, little) === SHORT_TYPE
    const value = isShort ? reader.uint16(entry + 8, little) : reader.uint32(entry + 8, little)
    entries.set(reader.uint16(entry, little), value)
  }
  return entries
}

/**
 * The least EXIF that says how to hold the photo and how long its lens was; null when there is nothing to say.
 * @returns a big-endian TIFF block
 */
export function minimalExif(facts: ExifFacts): Uint8Array | null {
  const focal = facts.focalLength35mm
  if (facts.orientation === 1 && focal === null) return null
  const bytes = new Uint8Array(focal === null ? 26 : 56)
  const view = new DataView(bytes.buffer)
  const entry = (at: number, tag: number, type: number, value: number): void => {
    view.setUint16(at, tag)
    view.setUint16(at + 2, type)
    view.setUint32(at + 4, 1)
    if (type === SHORT_TYPE) view.setUint16(at + 8, value)
    else view.setUint32(at + 8, value)
  }
  bytes.set([0x4d, 0x4d, 0x00, 0x2a, 0, 0, 0, 8])
  view.setUint16(8, focal === null ? 1 : 2)
  entry(10, ORIENTATION_TAG, SHORT_TYPE, facts.orientation)
  if (focal === null) return bytes
  entry(22, EXIF_IFD_TAG, 4, 38)
  view.setUint16(38, 1)
  entry(40, FOCAL_35MM_TAG, SHORT_TYPE, Math.round(focal))
  return bytes
}
