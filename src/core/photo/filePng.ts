import { byteReader, type ByteReader, type FilePart, type ImageStructure } from './fileBytes'

export const isPng = (reader: ByteReader): boolean =>
  reader.uint32(0) === 0x89504e47 && reader.uint32(4) === 0x0d0a1a0a

/** Text in any form, EXIF and the time of the last change: none of them changes a pixel. */
const DROPPED = new Set(['tEXt', 'zTXt', 'iTXt', 'eXIf', 'tIME'])

interface PngChunk extends FilePart {
  readonly type: string
}

/** Walks a PNG's chunks. Source: W3C Portable Network Graphics, 3rd edition, section 5 (from memory). */
export function pngStructure(bytes: Uint8Array): ImageStructure {
  const reader = byteReader(bytes)
  const chunks = pngChunks(reader)
  const exif = chunks.find((c) => c.type === 'eXIf')
  const hasHead = chunks[0]?.type === 'IHDR'
  return {
    storedWidthPx: hasHead ? reader.uint32(16) : 0,
    storedHeightPx: hasHead ? reader.uint32(20) : 0,
    exif: exif ? reader.slice(exif.start + 8, exif.end - 4) : null,
    locationElsewhere: chunks.some(
      (c) =>
        c.type.endsWith('Xt') &&
        /GPS(Lat|Long)/.test(reader.text(c.start + 8, Math.min(c.end - c.start, 60_000))),
    ),
    parts: [{ start: 0, end: 8, keep: true }, ...chunks],
    complete: hasHead && chunks.at(-1)?.type === 'IEND',
  }
}

/** Up to the end chunk, or as far as the file is whole. */
function pngChunks(reader: ByteReader): readonly PngChunk[] {
  const chunks: PngChunk[] = []
  let at = 8
  while (reader.has(at, 12) && chunks.at(-1)?.type !== 'IEND') {
    const end = at + 12 + reader.uint32(at)
    const type = reader.text(at + 4, 4)
    if (!reader.has(at, end - at)) break
    chunks.push({ start: at, end, type, keep: !DROPPED.has(type) })
    at = end
  }
  return chunks
}

/** An eXIf chunk around a TIFF block. */
export function pngExifChunk(tiff: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(12 + tiff.length)
  const view = new DataView(chunk.buffer)
  view.setUint32(0, tiff.length)
  chunk.set([0x65, 0x58, 0x49, 0x66], 4)
  chunk.set(tiff, 8)
  view.setUint32(8 + tiff.length, crc32(chunk.subarray(4, 8 + tiff.length)))
  return chunk
}

/** Checksum of PNG chunks: polynomial 0xEDB88320, as the PNG specification's annex D gives it. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}
