import type { ColourPlanes } from './picture'

/** What is known of each pixel of a reduced photo: a row of numbers. */
export interface Features {
  readonly widthPx: number
  readonly heightPx: number
  /** Photo pixels a side of one of these pixels. */
  readonly factor: number
  readonly dimensions: number
  readonly rows: Float32Array
}

const ROUGHNESS_REACH = 2
const ROUGHNESS_SCALE = 12

/** Sums over all pixels above and to the left, one row and column wider than the plane. */
function summed(plane: Float32Array, widthPx: number, heightPx: number, power: 1 | 2): Float64Array {
  const sums = new Float64Array((widthPx + 1) * (heightPx + 1))
  for (let y = 0; y < heightPx; y++) {
    let row = 0
    for (let x = 0; x < widthPx; x++) {
      row += (plane[y * widthPx + x] ?? 0) ** power
      sums[(y + 1) * (widthPx + 1) + x + 1] = (sums[y * (widthPx + 1) + x + 1] ?? 0) + row
    }
  }
  return sums
}

/** Lightness, two colour differences, and how rough the lightness is round about. */
export function featuresOf({ widthPx, heightPx, planes, factor }: ColourPlanes): Features {
  const [light, redGreen, yellowBlue] = planes
  const first = summed(light, widthPx, heightPx, 1)
  const second = summed(light, widthPx, heightPx, 2)
  const wide = widthPx + 1
  const rows = new Float32Array(widthPx * heightPx * 4)
  for (let y = 0; y < heightPx; y++) {
    const top = Math.max(0, y - ROUGHNESS_REACH) * wide
    const bottom = Math.min(heightPx, y + ROUGHNESS_REACH + 1) * wide
    for (let x = 0; x < widthPx; x++) {
      const left = Math.max(0, x - ROUGHNESS_REACH)
      const right = Math.min(widthPx, x + ROUGHNESS_REACH + 1)
      const count = ((bottom - top) / wide) * (right - left)
      const over = (sums: Float64Array): number =>
        ((sums[bottom + right] ?? 0) -
          (sums[bottom + left] ?? 0) -
          (sums[top + right] ?? 0) +
          (sums[top + left] ?? 0)) /
        count
      const spread = Math.sqrt(Math.max(0, over(second) - over(first) ** 2))
      const at = (y * widthPx + x) * 4
      rows[at] = light[at / 4] ?? 0
      rows[at + 1] = 2 * (redGreen[at / 4] ?? 0)
      rows[at + 2] = 2 * (yellowBlue[at / 4] ?? 0)
      rows[at + 3] = ROUGHNESS_SCALE * Math.log(2 + spread)
    }
  }
  return { widthPx, heightPx, factor, dimensions: 4, rows }
}
