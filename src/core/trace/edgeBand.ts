import type { Picture } from './picture'

type Place = readonly [x: number, y: number]

/** The photo straightened along a closed line: `count` places along it, steps of `unitPx` photo pixels across. */
export interface EdgeBand {
  readonly count: number
  readonly unitPx: number
  /** Steps to either side: across goes from −reach (inside) to reach (outside). */
  readonly reach: number
  readonly centres: Float64Array
  /** Unit normals, outwards. */
  readonly normals: Float64Array
  /** Three colours at each place along and across. */
  readonly colours: Float32Array
}

interface BandSize {
  readonly unitPx: number
  readonly along: number
  readonly reach: number
  readonly spread: number
}

/** Places every `stepPx` along a closed ring, as x, y pairs. */
export function resampledRing(ring: readonly Place[], stepPx: number): Float64Array {
  let length = 0
  for (const [n, [x0, y0]] of ring.entries()) {
    const [x1, y1] = ring[(n + 1) % ring.length] ?? [x0, y0]
    length += Math.hypot(x1 - x0, y1 - y0)
  }
  const count = Math.max(8, Math.round(length / stepPx))
  const step = length / count
  const places = new Float64Array(count * 2)
  let next = 0
  let before = 0
  for (const [n, [x0, y0]] of ring.entries()) {
    const [x1, y1] = ring[(n + 1) % ring.length] ?? [x0, y0]
    const side = Math.hypot(x1 - x0, y1 - y0)
    while (next < count && next * step <= before + side) {
      const share = side === 0 ? 0 : (next * step - before) / side
      places[next * 2] = x0 + (x1 - x0) * share
      places[next * 2 + 1] = y0 + (y1 - y0) * share
      next++
    }
    before += side
  }
  return places
}

/** A closed row of numbers, `width` to a place, smoothed by a bell of the given spread in places. */
export function smoothedAround(values: Float64Array, width: number, spread: number): Float64Array {
  const count = values.length / width
  const reach = Math.ceil(spread * 3)
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * spread * spread)),
  )
  const total = weights.reduce((a, b) => a + b, 0)
  const out = new Float64Array(values.length)
  for (let n = 0; n < count; n++) {
    for (let k = -reach; k <= reach; k++) {
      const weight = (weights[k + reach] ?? 0) / total
      const from = ((n + k + count * 4) % count) * width
      for (let c = 0; c < width; c++)
        out[n * width + c] = (out[n * width + c] ?? 0) + weight * (values[from + c] ?? 0)
    }
  }
  return out
}

function outwardNormals(centres: Float64Array): Float64Array {
  const count = centres.length / 2
  const normals = new Float64Array(centres.length)
  for (let n = 0; n < count; n++) {
    const a = ((n - 1 + count) % count) * 2
    const b = ((n + 1) % count) * 2
    const dx = (centres[b] ?? 0) - (centres[a] ?? 0)
    const dy = (centres[b + 1] ?? 0) - (centres[a + 1] ?? 0)
    const length = Math.hypot(dx, dy) || 1
    // The inside of a positive ring lies to the right of the way, y down.
    normals[n * 2] = dy / length
    normals[n * 2 + 1] = -dx / length
  }
  return normals
}

/** Bilinear red, green and blue at a photo place, in lightness and two colour differences. */
function colourInto(
  picture: Picture,
  x: number,
  y: number,
  out: Float32Array,
  at: number,
  weight: number,
): void {
  const { widthPx, heightPx, rgba } = picture
  const u = Math.min(Math.max(x - 0.5, 0), widthPx - 1.001)
  const v = Math.min(Math.max(y - 0.5, 0), heightPx - 1.001)
  const i = Math.floor(u)
  const j = Math.floor(v)
  const across = u - i
  const down = v - j
  const a = (j * widthPx + i) * 4
  const b = a + widthPx * 4
  const mixed = (c: number): number =>
    ((rgba[a + c] ?? 0) * (1 - across) + (rgba[a + 4 + c] ?? 0) * across) * (1 - down) +
    ((rgba[b + c] ?? 0) * (1 - across) + (rgba[b + 4 + c] ?? 0) * across) * down
  const red = mixed(0)
  const green = mixed(1)
  const blue = mixed(2)
  out[at] = (out[at] ?? 0) + (weight * (red + 2 * green + blue)) / 4
  out[at + 1] = (out[at + 1] ?? 0) + weight * 2 * (red - green)
  out[at + 2] = (out[at + 2] ?? 0) + weight * (red + green - 2 * blue)
}

const PLACES_A_SLICE = 500

/**
 * Straightens the photo along a ring. Yields between stretches.
 * @param ring   positive, photo pixels
 * @param unitPx photo pixels a step; the other lengths are in steps
 * @param along  spacing of the places along it
 * @param reach  steps to either side
 * @param spread how far corners and steps of the ring are smoothed first
 */
export function* edgeBand(
  picture: Picture,
  ring: readonly Place[],
  { unitPx, along, reach, spread }: BandSize,
): Generator<void, EdgeBand> {
  const centres = smoothedAround(resampledRing(ring, along * unitPx), 2, Math.max(0.3, spread / along))
  const normals = smoothedAround(outwardNormals(centres), 2, 1)
  const count = centres.length / 2
  const depth = 2 * reach + 1
  const colours = new Float32Array(count * depth * 3)
  for (let n = 0; n < count; n++) {
    if (n % PLACES_A_SLICE === 0) yield
    const nx = (normals[n * 2] ?? 0) * unitPx
    const ny = (normals[n * 2 + 1] ?? 0) * unitPx
    for (let t = -reach; t <= reach; t++) {
      const x = (centres[n * 2] ?? 0) + nx * t
      const y = (centres[n * 2 + 1] ?? 0) + ny * t
      const at = (n * depth + t + reach) * 3
      colourInto(picture, x, y, colours, at, 0.5)
      colourInto(picture, x - ny, y + nx, colours, at, 0.25)
      colourInto(picture, x + ny, y - nx, colours, at, 0.25)
    }
  }
  return { count, unitPx, reach, centres, normals, colours }
}
