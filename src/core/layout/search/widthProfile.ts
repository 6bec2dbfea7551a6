import { type EdgeSet, edgesOf, numberAt } from './edgeSet'
import type { SearchWood } from './searchWood'
import { type Bins, binsOver, StripBins } from './stripBins'
import type { StripRun } from './stripBox'

/**
 * The wood's width along a direction, in short bins: from one live edge to the other.
 * Holds scratch rows, so that a direction costs no memory.
 */
export class WidthProfile {
  readonly #bins: Bins
  readonly #halfMm: number
  readonly #wood: StripBins
  readonly #low: Float64Array
  readonly #high: Float64Array
  readonly #width: Float64Array

  /** @param bins over all wood; @param halfMm no wood lies further to the side */
  constructor(bins: Bins, halfMm: number) {
    this.#bins = bins
    this.#halfMm = halfMm
    this.#wood = new StripBins(bins.count)
    this.#low = new Float64Array(bins.count)
    this.#high = new Float64Array(bins.count)
    this.#width = new Float64Array(bins.count)
  }

  /** Mean width of wood in each bin at one angle. */
  fillWidths(edges: EdgeSet, angleRad: number): void {
    const { binMm, count } = this.#bins
    this.#wood.fill(edges, { angleRad, offsetMm: 0, half: this.#halfMm, taper: 0 }, this.#bins)
    for (let k = 0; k < count; k += 1)
      this.#width[k] = Math.max(0, 2 * this.#halfMm - this.#wood.openMm2(k) / binMm)
  }

  /**
   * What the width in each bin cannot exceed at any angle within `halfAngleRad`.
   * Method: a slanted line across the wood meets only bins within halfMm·sin of its foot; its stretch in wood is at most
   * their extent, slanted.
   */
  fillWidest(edges: EdgeSet, angleRad: number, halfAngleRad: number): void {
    this.#fillExtents(edges, angleRad)
    const { binMm, count } = this.#bins
    const reach = Math.ceil((this.#halfMm * Math.sin(halfAngleRad)) / binMm)
    const cos = Math.cos(halfAngleRad)
    for (let k = 0; k < count; k += 1) {
      let [low, high] = [Infinity, -Infinity]
      for (let j = Math.max(0, k - reach); j <= Math.min(count - 1, k + reach); j += 1) {
        low = Math.min(low, numberAt(this.#low, j))
        high = Math.max(high, numberAt(this.#high, j))
      }
      this.#width[k] = Math.max(0, high - low) / cos
    }
  }

  #fillExtents(edges: EdgeSet, angleRad: number): void {
    this.#low.fill(Infinity)
    this.#high.fill(-Infinity)
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    const { ax, ay, bx, by, count } = edges
    for (let i = 0; i < count; i += 1) {
      const [x1, y1, x2, y2] = [numberAt(ax, i), numberAt(ay, i), numberAt(bx, i), numberAt(by, i)]
      const [u1, v1] = [x1 * cos + y1 * sin, y1 * cos - x1 * sin]
      const [u2, v2] = [x2 * cos + y2 * sin, y2 * cos - x2 * sin]
      if (u1 < u2) this.#widen(u1, v1, u2, v2)
      else this.#widen(u2, v2, u1, v1)
    }
  }

  #widen(from: number, vFrom: number, to: number, vTo: number): void {
    const { startMm, binMm, count } = this.#bins
    const slope = to > from ? (vTo - vFrom) / (to - from) : 0
    const last = Math.min(count - 1, Math.floor((to - startMm) / binMm))
    for (let k = Math.max(0, Math.floor((from - startMm) / binMm)); k <= last; k += 1) {
      const v1 = vFrom + slope * (Math.max(from, startMm + k * binMm) - from)
      const v2 = to > from ? vFrom + slope * (Math.min(to, startMm + (k + 1) * binMm) - from) : vTo
      this.#low[k] = Math.min(numberAt(this.#low, k), v1, v2)
      this.#high[k] = Math.max(numberAt(this.#high, k), v1, v2)
    }
  }

  /** The longest row of bins that are all as wide as asked; null when there is none. */
  longestRun(leastMm: number): StripRun | null {
    const { startMm, binMm, count } = this.#bins
    let [bestFrom, bestTo, from] = [0, 0, 0]
    for (let k = 0; k <= count; k += 1) {
      if (k < count && numberAt(this.#width, k) >= leastMm) continue
      if (k - from > bestTo - bestFrom) [bestFrom, bestTo] = [from, k]
      from = k + 1
    }
    if (bestTo === bestFrom) return null
    return { fromMm: startMm + bestFrom * binMm, toMm: startMm + bestTo * binMm }
  }

  /** Least and mean width over a run that `longestRun` gave. */
  widthsOver({ fromMm, toMm }: StripRun): { readonly leastMm: number; readonly meanMm: number } {
    const { startMm, binMm } = this.#bins
    const from = Math.round((fromMm - startMm) / binMm)
    const widths = this.#width.subarray(from, Math.round((toMm - startMm) / binMm))
    return { leastMm: widths.reduce((least, w) => Math.min(least, w), Infinity), meanMm: meanOf(widths) }
  }

  /** Where the two live edges run over a run of bins, mm across the direction; fills the extents anew. */
  edgesOver(edges: EdgeSet, angleRad: number, { fromMm, toMm }: StripRun): EdgePlaces {
    this.#fillExtents(edges, angleRad)
    const { startMm, binMm } = this.#bins
    const from = Math.max(0, Math.ceil((fromMm - startMm) / binMm - 1e-6))
    const to = Math.max(from + 1, Math.floor((toMm - startMm) / binMm + 1e-6))
    const lows = this.#low.subarray(from, to).filter(Number.isFinite)
    const highs = this.#high.subarray(from, to).filter(Number.isFinite)
    return {
      meanLowMm: meanOf(lows),
      greatestLowMm: lows.reduce((most, low) => Math.max(most, low), -Infinity),
      meanHighMm: meanOf(highs),
      leastHighMm: highs.reduce((least, high) => Math.min(least, high), Infinity),
    }
  }
}

export interface EdgePlaces {
  readonly meanLowMm: number
  readonly greatestLowMm: number
  readonly meanHighMm: number
  readonly leastHighMm: number
}

const meanOf = (row: Float64Array): number => row.reduce((sum, value) => sum + value, 0) / row.length

/** Widths are read in bins of this length, mm. */
export const BIN_MM = 0.5

/** A profile over all of some wood. */
export const widthProfile = ({ radiusMm }: SearchWood): WidthProfile =>
  new WidthProfile(binsOver(radiusMm + BIN_MM, BIN_MM), radiusMm + 1)

/** The wood's live edges without its voids. */
export const outlineEdges = ({ regions, pivot }: SearchWood): EdgeSet =>
  edgesOf(
    regions.map(({ outer }) => ({ outer, holes: [] })),
    pivot,
  )
