/** Reads numbers out of a file's bytes; past the end everything reads as 0, and `has` tells. */
export interface ByteReader {
  readonly length: number
  has(offset: number, count: number): boolean
  byte(offset: number): number
  uint16(offset: number, littleEndian?: boolean): number
  uint32(offset: number, littleEndian?: boolean): number
  /** Bytes as Latin-1 text. */
  text(offset: number, count: number): string
  slice(start: number, end: number): Uint8Array
}

export function byteReader(bytes: Uint8Array): ByteReader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const has = (offset: number, count: number): boolean => offset >= 0 && offset + count <= bytes.length
  return {
    length: bytes.length,
    has,
    byte: (offset) => bytes[offset] ?? 0,
    uint16: (offset, littleEndian = false) => (has(offset, 2) ? view.getUint16(offset, littleEndian) : 0),
    uint32: (offset, littleEndian = false) => (has(offset, 4) ? view.getUint32(offset, littleEndian) : 0),
    text: (offset, count) => latin1(bytes.subarray(offset, offset + count)),
    slice: (start, end) => bytes.subarray(start, end),
  }
}

export function joinBytes(parts: readonly Uint8Array[]): Uint8Array {
  const joined = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0))
  let at = 0
  for (const part of parts) {
    joined.set(part, at)
    at += part.length
  }
  return joined
}

/** A stretch of the file; what is not kept may tell where or by whom the photo was taken. */
export interface FilePart {
  readonly start: number
  readonly end: number
  readonly keep: boolean
}

/** What the walk along a file's segments or chunks finds. */
export interface ImageStructure {
  /** As stored, before the orientation is honoured. */
  readonly storedWidthPx: number
  readonly storedHeightPx: number
  /** The TIFF block of its EXIF, if there is one. */
  readonly exif: Uint8Array | null
  /** Location or the like found outside of EXIF (in XMP). */
  readonly locationElsewhere: boolean
  readonly parts: readonly FilePart[]
  /** False when the file breaks off before its own end mark. */
  readonly complete: boolean
}

/** In pieces: a call takes only so many arguments. */
function latin1(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 4096)
    text += String.fromCharCode(...bytes.subarray(at, at + 4096))
  return text
}
