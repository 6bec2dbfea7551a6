import type { Point } from '../geometry'
import type { Colour, PixelWindow } from './pixelWindow'

/** Pixels of a window that belong together. */
export interface PixelRegion {
  /** 1 where a pixel belongs, row by row over the window. */
  readonly mask: Uint8Array
  readonly area: number
  /** How little the area changes with the threshold: 0 is perfectly stable. */
  readonly instability: number
}

const LEVELS = 256
/** The area is compared this many levels up and down. */
const STEADY_SPAN = 6
const LEAST_AREA_PX = 24

/**
 * The connected patch round a place whose colour is like a seed's, at the threshold where its area is steadiest.
 * @param at    where it starts, photo pixels
 * @param seed  colour to be like
 * @returns a patch that keeps off the window's border; null when nothing stands out
 * Method: every pixel's least worst-step from the start (bucket queue), then the most stable threshold, as maximally
 * stable extremal regions are found (Matas et al. 2002, from memory), on the distance in colour.
 */
export function growRegion(window: PixelWindow, at: Point, seed: Colour): PixelRegion | null {
  const { widthPx, heightPx } = window
  const start = pixelIndex(window, at)
  if (start < 0) return null
  const levels = levelsFrom(window, start, seed)
  const areaAt = new Float64Array(LEVELS + 1)
  let borderLevel = LEVELS
  levels.forEach((level, i) => {
    areaAt[level] = (areaAt[level] ?? 0) + 1
    if (isOnBorder(window, i)) borderLevel = Math.min(borderLevel, level)
  })
  for (let t = 1; t <= LEVELS; t++) areaAt[t] = (areaAt[t] ?? 0) + (areaAt[t - 1] ?? 0)
  const best = steadiestLevel(areaAt, borderLevel)
  if (best === null) return null
  const mask = new Uint8Array(widthPx * heightPx)
  levels.forEach((level, i) => {
    if (level <= best.level) mask[i] = 1
  })
  return { mask, area: areaAt[best.level] ?? 0, instability: best.instability }
}

const isOnBorder = ({ widthPx, heightPx }: PixelWindow, i: number): boolean => {
  const col = i % widthPx
  return col === 0 || col === widthPx - 1 || i < widthPx || i >= widthPx * (heightPx - 1)
}

export function pixelIndex(window: PixelWindow, [x, y]: Point): number {
  const col = Math.floor(x - window.leftPx)
  const row = Math.floor(y - window.topPx)
  const inside = col >= 0 && row >= 0 && col < window.widthPx && row < window.heightPx
  return inside ? row * window.widthPx + col : -1
}

/** For every pixel the least threshold at which it hangs together with the start. */
function levelsFrom(window: PixelWindow, start: number, seed: Colour): Uint16Array {
  const { widthPx, heightPx } = window
  const own = colourLevels(window, seed)
  const levels = new Uint16Array(widthPx * heightPx).fill(LEVELS)
  const buckets: number[][] = Array.from({ length: LEVELS }, () => [])
  const reach = (i: number, from: number): void => {
    const level = Math.max(from, own[i] ?? 0)
    if (level < (levels[i] ?? 0)) {
      levels[i] = level
      buckets[level]?.push(i)
    }
  }
  reach(start, 0)
  buckets.forEach((bucket, level) => {
    // The bucket grows while it is walked: neighbours of the same level join its end.
    for (let n = 0; n < bucket.length; n++) {
      const i = bucket[n] ?? 0
      if (levels[i] !== level) continue
      const col = i % widthPx
      if (col > 0) reach(i - 1, level)
      if (col < widthPx - 1) reach(i + 1, level)
      if (i >= widthPx) reach(i - widthPx, level)
      if (i < widthPx * (heightPx - 1)) reach(i + widthPx, level)
    }
  })
  return levels
}

/** Distance of each pixel's colour from the seed, in 256 levels. */
function colourLevels({ data, widthPx, heightPx }: PixelWindow, seed: Colour): Uint8Array {
  const own = new Uint8Array(widthPx * heightPx)
  for (let i = 0; i < own.length; i++) {
    const p = 4 * i
    const distance = Math.hypot(
      (data[p] ?? 0) - seed[0],
      (data[p + 1] ?? 0) - seed[1],
      (data[p + 2] ?? 0) - seed[2],
    )
    own[i] = Math.min(LEVELS - 1, Math.round(distance))
  }
  return own
}

function steadiestLevel(areaAt: Float64Array, below: number): { level: number; instability: number } | null {
  let best: { level: number; instability: number } | null = null
  for (let level = STEADY_SPAN; level + STEADY_SPAN < below; level++) {
    const area = areaAt[level] ?? 0
    if (area < LEAST_AREA_PX) continue
    const instability = ((areaAt[level + STEADY_SPAN] ?? 0) - (areaAt[level - STEADY_SPAN] ?? 0)) / area
    if (best === null || instability < best.instability) best = { level, instability }
  }
  return best
}

/** Fills what the region encloses (a dot on a sticker): everything that the window's border does not reach. */
export function withoutHoles(window: PixelWindow, region: PixelRegion): PixelRegion {
  const { widthPx, heightPx } = window
  const outside = new Uint8Array(widthPx * heightPx)
  const queue: number[] = []
  const visit = (i: number): void => {
    if (region.mask[i] === 0 && outside[i] === 0) {
      outside[i] = 1
      queue.push(i)
    }
  }
  for (let col = 0; col < widthPx; col++) [col, col + widthPx * (heightPx - 1)].forEach(visit)
  for (let row = 0; row < heightPx; row++) [row * widthPx, row * widthPx + widthPx - 1].forEach(visit)
  for (let i = queue.pop(); i !== undefined; i = queue.pop()) {
    const col = i % widthPx
    if (col > 0) visit(i - 1)
    if (col < widthPx - 1) visit(i + 1)
    if (i >= widthPx) visit(i - widthPx)
    if (i < widthPx * (heightPx - 1)) visit(i + widthPx)
  }
  const mask = outside.map((out) => 1 - out)
  return { ...region, mask, area: mask.reduce((sum, v) => sum + v, 0) }
}
