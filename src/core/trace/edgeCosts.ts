import type { GreyLevel } from './greyPyramid'
import type { WalkCosts } from './leastCostSearch'

const TILE_BITS = 6
const TILE = 1 << TILE_BITS
/** A tile with one place more round it for its neighbours' sake, and one more for theirs. */
const CURVED = TILE + 4

/** Weights in hundredths; the third, for direction, is in `leastCostSearch`. */
const WEIGHT_CROSSING = 43
const WEIGHT_GRADIENT = 14

/** Most that is added where a place does not look like the accepted edge, in hundredths. */
const MOST_UNLIKE = 6
const BINS = 16

/**
 * What it costs to walk along an edge in one level of a photo: little on zero crossings of the second derivative, along
 * the edge's own direction, and where the gradient is strong (Mortensen and Barrett, SIGGRAPH 1995); and, once an edge
 * was accepted, where it looks like that one. Worked out tile by tile, where it is asked for.
 */
export class EdgeCosts implements WalkCosts {
  readonly level: GreyLevel
  readonly place: Uint8Array
  readonly alongX: Int8Array
  readonly alongY: Int8Array
  readonly look: Uint8Array
  readonly unlike = new Uint8Array(BINS * BINS)
  readonly #tiles: Uint8Array
  readonly #tilesWide: number
  readonly #curvatures = new Int16Array(CURVED * CURVED)
  readonly #strongest: number

  constructor(level: GreyLevel) {
    const { widthPx, heightPx } = level
    this.level = level
    this.place = new Uint8Array(widthPx * heightPx)
    this.alongX = new Int8Array(widthPx * heightPx)
    this.alongY = new Int8Array(widthPx * heightPx)
    this.look = new Uint8Array(widthPx * heightPx)
    this.#tilesWide = Math.ceil(widthPx / TILE)
    this.#tiles = new Uint8Array(this.#tilesWide * Math.ceil(heightPx / TILE))
    this.#strongest = usualStrongest(level)
  }

  /** Makes sure that the costs of a place and its neighbours are known. */
  ready(x: number, y: number): void {
    const tile = (y >> TILE_BITS) * this.#tilesWide + (x >> TILE_BITS)
    if (this.#tiles[tile] === 1) return
    this.#tiles[tile] = 1
    this.#fill(x >> TILE_BITS, y >> TILE_BITS)
  }

  /** Learns how an accepted edge looks: how light both its sides are, as often as they were met. */
  learn(places: readonly (readonly [x: number, y: number])[]): void {
    const counts = new Float64Array(BINS * BINS)
    for (const [x, y] of places) {
      this.ready(x, y)
      const bin = this.look[y * this.level.widthPx + x] ?? 0
      for (let i = -1; i <= 1; i++) {
        for (let j = -1; j <= 1; j++) {
          const near = bin + i * BINS + j
          counts[near] = (counts[near] ?? 0) + 1 / (1 + Math.abs(i) + Math.abs(j))
        }
      }
    }
    const most = Math.max(...counts)
    if (most === 0) return
    for (const [bin, count] of counts.entries())
      this.unlike[bin] = Math.round(MOST_UNLIKE * (1 - count / most))
  }

  #fill(tileX: number, tileY: number): void {
    const { widthPx, heightPx } = this.level
    // One place more on every side: a step out of the tile asks for its costs.
    const left = Math.max(0, tileX * TILE - 1)
    const top = Math.max(0, tileY * TILE - 1)
    const right = Math.min(widthPx - 1, (tileX + 1) * TILE)
    const bottom = Math.min(heightPx - 1, (tileY + 1) * TILE)
    this.#fillCurvatures(left, top, right, bottom)
    for (let y = top; y <= bottom; y++) {
      for (let x = left; x <= right; x++) {
        const isRim = x < 2 || y < 2 || x >= widthPx - 2 || y >= heightPx - 2
        if (isRim) this.place[y * widthPx + x] = WEIGHT_CROSSING + WEIGHT_GRADIENT
        else this.#fillOne(y * widthPx + x, (y - top + 1) * CURVED + x - left + 1)
      }
    }
  }

  /** Second derivatives of a tile and one place round it, each worked out once. */
  #fillCurvatures(left: number, top: number, right: number, bottom: number): void {
    const { widthPx: wide, heightPx, grey } = this.level
    const lastX = Math.min(wide - 2, right + 1)
    const lastY = Math.min(heightPx - 2, bottom + 1)
    for (let y = Math.max(1, top - 1); y <= lastY; y++) {
      for (let x = Math.max(1, left - 1); x <= lastX; x++) {
        const at = y * wide + x
        const around =
          (grey[at + 1] ?? 0) + (grey[at - 1] ?? 0) + (grey[at + wide] ?? 0) + (grey[at - wide] ?? 0)
        this.#curvatures[(y - top + 1) * CURVED + x - left + 1] = around - 4 * (grey[at] ?? 0)
      }
    }
  }

  #grey(at: number): number {
    return this.level.grey[at] ?? 0
  }

  #fillOne(at: number, curved: number): void {
    const wide = this.level.widthPx
    const falling = this.#grey(at + wide + 1) - this.#grey(at - wide - 1)
    const rising = this.#grey(at - wide + 1) - this.#grey(at + wide - 1)
    const gx = (2 * (this.#grey(at + 1) - this.#grey(at - 1)) + falling + rising) / 8
    const gy = (2 * (this.#grey(at + wide) - this.#grey(at - wide)) + falling - rising) / 8
    const strength = Math.sqrt(gx * gx + gy * gy)
    const unitX = strength === 0 ? 0 : gx / strength
    const unitY = strength === 0 ? 0 : gy / strength
    const strong = Math.min(1, strength / this.#strongest)
    // The edge runs square to the gradient.
    this.alongX[at] = Math.round(-127 * unitY)
    this.alongY[at] = Math.round(127 * unitX)
    this.place[at] =
      (this.#isCrossing(curved) ? 0 : WEIGHT_CROSSING) + Math.round(WEIGHT_GRADIENT * (1 - strong))
    const away = Math.round(2 * unitX) + wide * Math.round(2 * unitY)
    this.look[at] = (this.#grey(at - away) >> 4) * BINS + (this.#grey(at + away) >> 4)
  }

  /** Whether the second derivative changes its sign here, nearer to zero than at the neighbour. */
  #isCrossing(at: number): boolean {
    const curvatures = this.#curvatures
    const here = curvatures[at] ?? 0
    return (
      here === 0 ||
      crosses(here, curvatures[at + 1] ?? 0) ||
      crosses(here, curvatures[at - 1] ?? 0) ||
      crosses(here, curvatures[at + CURVED] ?? 0) ||
      crosses(here, curvatures[at - CURVED] ?? 0)
    )
  }
}

const crosses = (here: number, there: number): boolean =>
  here * there < 0 && Math.abs(here) <= Math.abs(there)

const SAMPLES = 20_000
const STRONG_SHARE = 0.98
const LEAST_STRONG = 8

/** A gradient that only two in a hundred places exceed: what counts as strong in this photo. */
function usualStrongest({ grey, widthPx }: GreyLevel): number {
  const stride = Math.max(1, Math.floor(grey.length / SAMPLES))
  const gradients: number[] = []
  for (let at = widthPx + 1; at < grey.length - widthPx - 1; at += stride) {
    const gx = (grey[at + 1] ?? 0) - (grey[at - 1] ?? 0)
    const gy = (grey[at + widthPx] ?? 0) - (grey[at - widthPx] ?? 0)
    gradients.push(Math.hypot(gx, gy) / 2)
  }
  gradients.sort((a, b) => a - b)
  return Math.max(LEAST_STRONG, gradients[Math.floor(STRONG_SHARE * gradients.length)] ?? 0)
}
