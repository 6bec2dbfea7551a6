const CENTRAL_HEADER = 0x02014b50
const END_RECORD = 0x06054b50
const END_RECORD_BYTES = 22
const LONGEST_COMMENT = 65_535

const crcTable = (): Uint32Array =>
  Uint32Array.from({ length: 256 }, (_, n) => {
    let value = n
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
    return value
  })

/** CRC-32 as zip files use it (ISO 3309, reflected polynomial 0xEDB88320). */
export function crc32(bytes: Uint8Array): number {
  const table = crcTable()
  let crc = 0xffffffff
  for (const byte of bytes) crc = (table[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8)
  return (crc ^ 0xffffffff) >>> 0
}

/** From the end, past a comment that may follow the record. */
function endRecordAt(view: DataView): number | null {
  const last = view.byteLength - END_RECORD_BYTES
  for (let at = last; at >= 0 && at >= last - LONGEST_COMMENT; at--) {
    if (view.getUint32(at, true) === END_RECORD) return at
  }
  return null
}

/**
 * The checksum that a zip's directory states for each entry. The unpacker does not compare them, and a plan with one
 * wrong digit could still be read.
 * @returns by name; entries of a broken directory are missing
 */
export function statedChecksums(zip: Uint8Array): ReadonlyMap<string, number> {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength)
  const end = endRecordAt(view)
  const found = new Map<string, number>()
  if (end === null) return found
  let at = view.getUint32(end + 16, true)
  while (at + 46 <= zip.length && view.getUint32(at, true) === CENTRAL_HEADER) {
    const nameLength = view.getUint16(at + 28, true)
    const name = new TextDecoder().decode(zip.subarray(at + 46, at + 46 + nameLength))
    found.set(name, view.getUint32(at + 16, true))
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  }
  return found
}
