export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8

export interface ExifTags {
  readonly orientation?: Orientation
  readonly location?: { readonly latitudeDeg: number; readonly longitudeDeg: number }
}

/** One entry of a TIFF directory: tag, type (2 text, 3 short, 4 long, 5 ratio, as TIFF 6.0 numbers them), count, bytes. */
interface Entry {
  readonly tag: number
  readonly type: 2 | 3 | 4 | 5
  readonly count: number
  readonly bytes: Buffer
}

const short = (tag: number, value: number): Entry => {
  const bytes = Buffer.alloc(2)
  bytes.writeUInt16BE(value)
  return { tag, type: 3, count: 1, bytes }
}

const long = (tag: number, value: number): Entry => {
  const bytes = Buffer.alloc(4)
  bytes.writeUInt32BE(value)
  return { tag, type: 4, count: 1, bytes }
}

const text = (tag: number, value: string): Entry => {
  const bytes = Buffer.from(`${value}\0`, 'ascii')
  return { tag, type: 2, count: bytes.length, bytes }
}

/** Degrees, minutes and seconds as three ratios. */
const angle = (tag: number, deg: number): Entry => {
  const hundredths = Math.round(Math.abs(deg) * 360_000)
  const ratios = [
    [Math.floor(hundredths / 360_000), 1],
    [Math.floor((hundredths % 360_000) / 6000), 1],
    [hundredths % 6000, 100],
  ].flat()
  const bytes = Buffer.alloc(24)
  ratios.forEach((value, i) => bytes.writeUInt32BE(value, i * 4))
  return { tag, type: 5, count: 3, bytes }
}

/** A directory that starts `offset` bytes into the TIFF part; what does not fit into an entry follows it. */
const directory = (entries: readonly Entry[], offset: number): Buffer => {
  const head = Buffer.alloc(2 + entries.length * 12 + 4)
  head.writeUInt16BE(entries.length)
  const tail: Buffer[] = []
  let tailOffset = offset + head.length
  entries.forEach(({ tag, type, count, bytes }, i) => {
    const at = 2 + i * 12
    head.writeUInt16BE(tag, at)
    head.writeUInt16BE(type, at + 2)
    head.writeUInt32BE(count, at + 4)
    if (bytes.length <= 4) {
      bytes.copy(head, at + 8)
      return
    }
    head.writeUInt32BE(tailOffset, at + 8)
    tail.push(bytes)
    tailOffset += bytes.length
  })
  return Buffer.concat([head, ...tail])
}

const gpsEntries = ({ latitudeDeg, longitudeDeg }: NonNullable<ExifTags['location']>): readonly Entry[] => [
  text(1, latitudeDeg < 0 ? 'S' : 'N'),
  angle(2, latitudeDeg),
  text(3, longitudeDeg < 0 ? 'W' : 'E'),
  angle(4, longitudeDeg),
]

const TIFF_HEADER = Buffer.from([0x4d, 0x4d, 0, 42, 0, 0, 0, 8])

/** The APP1 segment of a JPEG that carries these tags (Exif 2.3: marker, length, `Exif\0\0`, big-endian TIFF). */
const exifSegment = ({ orientation, location }: ExifTags): Buffer => {
  const own = orientation ? [short(0x112, orientation)] : []
  const gpsOffset = TIFF_HEADER.length + 2 + (own.length + 1) * 12 + 4
  const tiff = location
    ? [directory([...own, long(0x8825, gpsOffset)], 8), directory(gpsEntries(location), gpsOffset)]
    : [directory(own, 8)]
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), TIFF_HEADER, ...tiff])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}

/** The same JPEG without its APP1 segments (EXIF, and any other description there). */
const withoutApp1 = (jpeg: Uint8Array): Buffer => {
  const bytes = Buffer.from(jpeg)
  const kept = [bytes.subarray(0, 2)]
  let at = 2
  while (bytes[at] === 0xff && bytes[at + 1] !== 0xda) {
    const next = at + 2 + bytes.readUInt16BE(at + 2)
    if (bytes[at + 1] !== 0xe1) kept.push(bytes.subarray(at, next))
    at = next
  }
  return Buffer.concat([...kept, bytes.subarray(at)])
}

/** The same picture with these tags and no others. */
export const withExif = (jpeg: Uint8Array, tags: ExifTags): Uint8Array => {
  const bare = withoutApp1(jpeg)
  return new Uint8Array(Buffer.concat([bare.subarray(0, 2), exifSegment(tags), bare.subarray(2)]))
}
