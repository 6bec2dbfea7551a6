import { deflateSync, crc32 } from 'node:zlib'
import type { Orientation } from './exif'

/** Four bytes a pixel (red, green, blue, opaque), row by row from the top left. */
export interface Pixels {
  readonly widthPx: number
  readonly heightPx: number
  readonly rgba: Uint8Array
}

/** Where a stored pixel shows upright, by EXIF orientation (Exif 2.3, tag 274: which sides row 0 and column 0 are). */
const storedFromUpright: Readonly<
  Record<Orientation, (x: number, y: number, w: number, h: number) => readonly [number, number]>
> = {
  1: (x, y) => [x, y],
  2: (x, y, w) => [w - 1 - x, y],
  3: (x, y, w, h) => [w - 1 - x, h - 1 - y],
  4: (x, y, _w, h) => [x, h - 1 - y],
  5: (x, y) => [y, x],
  6: (x, y, w) => [y, w - 1 - x],
  7: (x, y, w, h) => [h - 1 - y, w - 1 - x],
  8: (x, y, _w, h) => [h - 1 - y, x],
}

/** The pixels as a camera stores them when it writes this orientation, so that the upright picture is `upright`. */
export const storedPixels = (upright: Pixels, orientation: Orientation): Pixels => {
  const { widthPx: w, heightPx: h } = upright
  const turned = orientation >= 5
  const widthPx = turned ? h : w
  const from = new Uint32Array(upright.rgba.buffer, upright.rgba.byteOffset, w * h)
  const to = new Uint32Array(w * h)
  const place = storedFromUpright[orientation]
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const [storedX, storedY] = place(x, y, w, h)
      to[storedY * widthPx + storedX] = from[y * w + x] ?? 0
    }
  }
  return { widthPx, heightPx: turned ? w : h, rgba: new Uint8Array(to.buffer) }
}

/** A larger copy, bilinear. Both pictures share their outer corners: what lies at x of the old width lies at x of the new. */
export const enlarged = (source: Pixels, widthPx: number, heightPx: number): Pixels => {
  const rgba = new Uint8Array(widthPx * heightPx * 4)
  const left = new Uint32Array(widthPx)
  const right = new Uint32Array(widthPx)
  const share = new Float32Array(widthPx)
  for (let x = 0; x < widthPx; x++) {
    const at = Math.min(Math.max(((x + 0.5) * source.widthPx) / widthPx - 0.5, 0), source.widthPx - 1)
    left[x] = Math.floor(at) * 4
    right[x] = Math.min(Math.floor(at) + 1, source.widthPx - 1) * 4
    share[x] = at - Math.floor(at)
  }
  const pixel = source.rgba
  for (let y = 0; y < heightPx; y++) {
    const at = Math.min(Math.max(((y + 0.5) * source.heightPx) / heightPx - 0.5, 0), source.heightPx - 1)
    const above = Math.floor(at) * source.widthPx * 4
    const below = Math.min(Math.floor(at) + 1, source.heightPx - 1) * source.widthPx * 4
    const down = at - Math.floor(at)
    for (let x = 0; x < widthPx; x++) {
      const l = left[x] ?? 0
      const r = right[x] ?? 0
      const across = share[x] ?? 0
      const out = (y * widthPx + x) * 4
      for (let c = 0; c < 3; c++) {
        const top = (pixel[above + l + c] ?? 0) * (1 - across) + (pixel[above + r + c] ?? 0) * across
        const bottom = (pixel[below + l + c] ?? 0) * (1 - across) + (pixel[below + r + c] ?? 0) * across
        rgba[out + c] = top * (1 - down) + bottom * down + 0.5
      }
      rgba[out + 3] = 255
    }
  }
  return { widthPx, heightPx, rgba }
}

/** A copy `factor` times smaller each way: the mean of each block. Sides must divide by the factor. */
export const reduced = (source: Pixels, factor: number): Pixels => {
  const widthPx = source.widthPx / factor
  const heightPx = source.heightPx / factor
  if (!Number.isInteger(widthPx) || !Number.isInteger(heightPx)) {
    throw new Error(`${source.widthPx} by ${source.heightPx} does not divide by ${factor}`)
  }
  const rgba = new Uint8Array(widthPx * heightPx * 4)
  for (let out = 0; out < rgba.length; out++) {
    const x = ((out >> 2) % widthPx) * factor
    const y = Math.floor((out >> 2) / widthPx) * factor
    let sum = 0
    for (let i = 0; i < factor * factor; i++) {
      const at = (y + Math.floor(i / factor)) * source.widthPx + x + (i % factor)
      sum += source.rgba[at * 4 + (out & 3)] ?? 0
    }
    rgba[out] = Math.round(sum / (factor * factor))
  }
  return { widthPx, heightPx, rgba }
}

const pngChunk = (name: string, data: Uint8Array): Buffer => {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, check])
}

/** A PNG (RGBA, 8 bits, no filter), as the W3C's PNG specification lays it out. */
export const encodePng = ({ widthPx, heightPx, rgba }: Pixels): Uint8Array => {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(widthPx, 0)
  header.writeUInt32BE(heightPx, 4)
  header.set([8, 6, 0, 0, 0], 8)
  const rows = Buffer.alloc(heightPx * (widthPx * 4 + 1))
  for (let y = 0; y < heightPx; y++) {
    rows.set(rgba.subarray(y * widthPx * 4, (y + 1) * widthPx * 4), y * (widthPx * 4 + 1) + 1)
  }
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const chunks = [
    pngChunk('IHDR', header),
    pngChunk('IDAT', deflateSync(rows)),
    pngChunk('IEND', Buffer.alloc(0)),
  ]
  return new Uint8Array(Buffer.concat([signature, ...chunks]))
}
