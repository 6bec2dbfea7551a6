import type { Mask } from './maskRegions'

type Place = readonly [x: number, y: number]

/** Where a side of a ring crosses the middle lines of the rows of pixels. */
function crossSide(crossings: readonly number[][], a: Place, b: Place, factor: number): void {
  const [[x0, y0], [x1, y1]] = a[1] < b[1] ? [a, b] : [b, a]
  const last = Math.min(crossings.length - 1, Math.ceil(y1 / factor - 0.5) - 1)
  for (let row = Math.max(0, Math.ceil(y0 / factor - 0.5)); row <= last; row++) {
    const share = ((row + 0.5) * factor - y0) / (y1 - y0)
    crossings[row]?.push((x0 + (x1 - x0) * share) / factor)
  }
}

/**
 * The pixels whose centres lie in a ring (even-odd).
 * @param factor ring units a side of one of the mask's pixels
 */
export function ringMask(ring: readonly Place[], widthPx: number, heightPx: number, factor: number): Mask {
  const inside = new Uint8Array(widthPx * heightPx)
  const crossings: number[][] = Array.from({ length: heightPx }, () => [])
  for (const [n, a] of ring.entries()) crossSide(crossings, a, ring[(n + 1) % ring.length] ?? a, factor)
  for (const [row, places] of crossings.entries()) {
    places.sort((a, b) => a - b)
    for (let n = 0; n + 1 < places.length; n += 2) {
      const from = Math.max(0, Math.ceil((places[n] ?? 0) - 0.5))
      const to = Math.min(widthPx, Math.ceil((places[n + 1] ?? 0) - 0.5))
      if (to > from) inside.fill(1, row * widthPx + from, row * widthPx + to)
    }
  }
  return { widthPx, heightPx, inside }
}
