import type { Mask } from './maskRegions'

/**
 * The longest line between inside and outside, along the sides of the pixels, in mask pixels from the corner of the
 * first. The inside lies to the right (y down): a positive ring. Pixels that touch at a corner are apart.
 */
export function maskOutline(mask: Mask): readonly (readonly [number, number])[] {
  const { widthPx, heightPx, inside } = mask
  const isIn = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < widthPx && y < heightPx && inside[y * widthPx + x] === 1
  const seen = new Uint8Array(widthPx * heightPx)
  let longest: [number, number][] = []
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      if (!isIn(x, y) || isIn(x, y - 1) || seen[y * widthPx + x] === 1) continue
      const ring = walk(isIn, seen, widthPx, x, y)
      if (ring.length > longest.length) longest = ring
    }
  }
  return longest
}

const STEPS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const

/** Follows the side above a pixel, rightwards, and so round with the inside on the right. */
function walk(
  isIn: (x: number, y: number) => boolean,
  seen: Uint8Array,
  widthPx: number,
  startX: number,
  startY: number,
): [number, number][] {
  const ring: [number, number][] = []
  let x = startX
  let y = startY
  let heading = 0
  do {
    ring.push([x, y])
    if (heading === 0) seen[y * widthPx + x] = 1
    const [dx, dy] = STEPS[heading] ?? STEPS[0]
    x += dx
    y += dy
    heading = turned(isIn, x, y, heading)
  } while (x !== startX || y !== startY || heading !== 0)
  return ring
}

/** The pixels ahead of corner (x, y), left and right of the way. */
function turned(isIn: (x: number, y: number) => boolean, x: number, y: number, heading: number): number {
  const ahead = [
    [isIn(x, y - 1), isIn(x, y)],
    [isIn(x, y), isIn(x - 1, y)],
    [isIn(x - 1, y), isIn(x - 1, y - 1)],
    [isIn(x - 1, y - 1), isIn(x, y - 1)],
  ][heading] ?? [false, false]
  const [left, right] = ahead
  if (right !== true) return (heading + 1) % 4
  return left === true ? (heading + 3) % 4 : heading
}
