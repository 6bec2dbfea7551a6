import type { Mask } from './maskRegions'

/** Spreads `value` by one pixel to all eight sides. */
function spreadOnce({ widthPx, heightPx, inside }: Mask, value: 0 | 1): Mask {
  const out = inside.slice()
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      if (inside[y * widthPx + x] !== value) continue
      for (let j = Math.max(0, y - 1); j <= Math.min(heightPx - 1, y + 1); j++) {
        const row = j * widthPx
        out.fill(value, row + Math.max(0, x - 1), row + Math.min(widthPx, x + 2))
      }
    }
  }
  return { widthPx, heightPx, inside: out }
}

/** The mask grown by so many pixels (squares), or shrunk when below zero. */
export function grownMask(mask: Mask, byPx: number): Mask {
  let grown = mask
  for (let n = 0; n < Math.abs(byPx); n++) grown = spreadOnce(grown, byPx > 0 ? 1 : 0)
  return grown
}
