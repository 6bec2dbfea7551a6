import type { Mask } from './maskRegions'

/** The wood round about: this far to all sides. */
const AROUND_PX = 40
const OUTSIDE = 9

interface Sums {
  readonly wide: number
  readonly logs: Float64Array
  readonly counts: Float64Array
}

/** Sums over all pixels of the mask above and to the left. */
function summed(light: Float32Array, { widthPx, heightPx, inside }: Mask): Sums {
  const wide = widthPx + 1
  const logs = new Float64Array(wide * (heightPx + 1))
  const counts = new Float64Array(wide * (heightPx + 1))
  for (let y = 0; y < heightPx; y++) {
    let sum = 0
    let count = 0
    for (let x = 0; x < widthPx; x++) {
      const at = y * widthPx + x
      if (inside[at] === 1) {
        sum += Math.log(1 + (light[at] ?? 0))
        count++
      }
      const out = (y + 1) * wide + x + 1
      logs[out] = (logs[out - wide] ?? 0) + sum
      counts[out] = (counts[out - wide] ?? 0) + count
    }
  }
  return { wide, logs, counts }
}

/** Lightness of each pixel against the mean (of logarithms) of the mask round about; 9 outside the mask. */
export function lightnessAgainstWood(light: Float32Array, mask: Mask): Float32Array {
  const { widthPx, heightPx, inside } = mask
  const { wide, logs, counts } = summed(light, mask)
  const fractions = new Float32Array(widthPx * heightPx).fill(OUTSIDE)
  for (let at = 0; at < fractions.length; at++) {
    if (inside[at] !== 1) continue
    const x = at % widthPx
    const y = Math.floor(at / widthPx)
    const left = Math.max(0, x - AROUND_PX)
    const right = Math.min(widthPx, x + AROUND_PX + 1)
    const top = Math.max(0, y - AROUND_PX) * wide
    const bottom = Math.min(heightPx, y + AROUND_PX + 1) * wide
    const over = (sums: Float64Array): number =>
      (sums[bottom + right] ?? 0) -
      (sums[bottom + left] ?? 0) -
      (sums[top + right] ?? 0) +
      (sums[top + left] ?? 0)
    fractions[at] = (1 + (light[at] ?? 0)) / Math.exp(over(logs) / over(counts))
  }
  return fractions
}
