import { meanClamped } from './areaKernel'
import type { EdgeSet } from './edgeSet'

import type { StripAt, StripRun } from './stripBox'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/** Equal short bins along a strip's line, on both sides of the pivot's foot. */
export interface Bins {
  readonly startMm: number
  readonly binMm: number
  readonly count: number
}

export const binsOver = (reachMm: number, binMm: number): Bins => ({
  startMm: -reachMm,
  binMm,
  count: Math.ceil((2 * reachMm) / binMm),
})

/** A strip that narrows to both sides of the pivot: half width at u is half − taper·|u|. */
export interface BinStrip extends StripAt {
  readonly half: number
  readonly taper: number
}

/** What of a strip lies open, bin by bin. Holds scratch rows, so that a strip costs no memory. */
export class StripBins {
  readonly #openMm2: Float64Array
  readonly #isBarred: Uint8Array
  /** Half width of the strip that holds over each bin. */
  readonly #half: Float64Array
  readonly #sum: Float64Array
  readonly #least: Float64Array

  /** @param most greatest number of bins asked for */
  constructor(most: number) {
    this.#openMm2 = new Float64Array(most)
    this.#isBarred = new Uint8Array(most)
    this.#half = new Float64Array(most)
    this.#sum = new Float64Array(most + 1)
    this.#least = new Float64Array(most + 1)
  }

  /**
   * Writes for each bin the open area of the strip in it.
   * Method: wood in a bin is Σ over edges of ∫ clamp(v, −half, half) du; within a bin the half width is constant (its
   * least), so that what is found open is open.
   */
  fill(edges: EdgeSet, strip: BinStrip, bins: Bins): void {
    const open = this.#openMm2
    this.#isBarred.fill(0, 0, bins.count)
    this.#setHalves(strip, bins)
    for (let k = 0; k < bins.count; k += 1) open[k] = 2 * numberAt(this.#half, k) * bins.binMm
    const [cos, sin] = [Math.cos(strip.angleRad), Math.sin(strip.angleRad)]
    const { ax, ay, bx, by, count } = edges
    for (let i = 0; i < count; i += 1) {
      const [x1, y1, x2, y2] = [numberAt(ax, i), numberAt(ay, i), numberAt(bx, i), numberAt(by, i)]
      const [u1, u2] = [x1 * cos + y1 * sin, x2 * cos + y2 * sin]
      const v1 = y1 * cos - x1 * sin - strip.offsetMm
      const v2 = y2 * cos - x2 * sin - strip.offsetMm
      // Wood lies at greater v of an edge that runs to greater u.
      if (u1 < u2) this.#takeWood(u1, v1, u2, v2, -1, bins)
      else this.#takeWood(u2, v2, u1, v1, 1, bins)
    }
  }

  #takeWood(from: number, vFrom: number, to: number, vTo: number, sign: number, bins: Bins): void {
    if (to - from < 1e-12) return
    const { startMm, binMm } = bins
    const slope = (vTo - vFrom) / (to - from)
    const last = Math.min(bins.count - 1, Math.floor((to - startMm) / binMm))
    for (let k = Math.max(0, Math.floor((from - startMm) / binMm)); k <= last; k += 1) {
      const low = Math.max(from, startMm + k * binMm)
      const high = Math.min(to, startMm + (k + 1) * binMm)
      const mean = meanClamped(
        vFrom + slope * (low - from),
        vFrom + slope * (high - from),
        numberAt(this.#half, k),
      )
      this.#openMm2[k] = numberAt(this.#openMm2, k) - sign * (high - low) * mean
    }
  }

  #setHalves(strip: BinStrip, bins: Bins): void {
    for (let k = 0; k < bins.count; k += 1) this.#half[k] = halfIn(k, strip, bins)
  }

  /** Open area in a bin, as filled. */
  openMm2(bin: number): number {
    return numberAt(this.#openMm2, bin)
  }

  /** Bars every bin in which an edge reaches into the strip: a run may end there, never pass. */
  bar(edges: EdgeSet, strip: BinStrip, bins: Bins): void {
    this.#setHalves(strip, bins)
    const [cos, sin] = [Math.cos(strip.angleRad), Math.sin(strip.angleRad)]
    const { ax, ay, bx, by, count } = edges
    for (let i = 0; i < count; i += 1) {
      const v1 = numberAt(ay, i) * cos - numberAt(ax, i) * sin - strip.offsetMm
      const v2 = numberAt(by, i) * cos - numberAt(bx, i) * sin - strip.offsetMm
      if ((v1 >= strip.half && v2 >= strip.half) || (v1 <= -strip.half && v2 <= -strip.half)) continue
      const u1 = numberAt(ax, i) * cos + numberAt(ay, i) * sin
      const u2 = numberAt(bx, i) * cos + numberAt(by, i) * sin
      if (u1 < u2) this.#barEdge(u1, v1, u2, v2, bins)
      else this.#barEdge(u2, v2, u1, v1, bins)
    }
  }

  #barEdge(from: number, vFrom: number, to: number, vTo: number, bins: Bins): void {
    const { startMm, binMm } = bins
    const slope = to > from ? (vTo - vFrom) / (to - from) : 0
    const last = Math.min(bins.count - 1, Math.floor((to - startMm) / binMm))
    for (let k = Math.max(0, Math.floor((from - startMm) / binMm)); k <= last; k += 1) {
      const vLow = vFrom + slope * (Math.max(from, startMm + k * binMm) - from)
      const vHigh = to > from ? vFrom + slope * (Math.min(to, startMm + (k + 1) * binMm) - from) : vTo
      const half = numberAt(this.#half, k)
      if (Math.min(vLow, vHigh) < half && Math.max(vLow, vHigh) > -half) this.#isBarred[k] = 1
    }
  }

  /**
   * The longest row of bins without a barred one whose open area is at most `allowedMm2` for each bin, plus slack.
   * @returns its ends, mm; null when not even one bin will do
   */
  longestRun(bins: Bins, allowedMm2: number, slackMm2: number): StripRun | null {
    let [bestFrom, bestTo] = [0, 0]
    for (let from = 0; from < bins.count;) {
      let to = from
      while (to < bins.count && this.#isBarred[to] === 0) to += 1
      if (to - from > bestTo - bestFrom) {
        const best = this.#longestBetween(from, to, allowedMm2, slackMm2, bestTo - bestFrom)
        if (best !== null) [bestFrom, bestTo] = best
      }
      from = to + 1
    }
    if (bestTo === bestFrom) return null
    return { fromMm: bins.startMm + bestFrom * bins.binMm, toMm: bins.startMm + bestTo * bins.binMm }
  }

  /**
   * Method: a row is allowed when the running sum of (open − allowed) ends no higher than it began, slack apart: the
   * greatest distance between a place and a later one that is no higher, by suffix minima and two pointers.
   */
  #longestBetween(
    start: number,
    end: number,
    allowedMm2: number,
    slackMm2: number,
    moreThan: number,
  ): readonly [number, number] | null {
    const [sum, least] = [this.#sum, this.#least]
    sum[start] = 0
    for (let k = start; k < end; k += 1)
      sum[k + 1] = numberAt(sum, k) + Math.max(0, numberAt(this.#openMm2, k)) - allowedMm2
    least[end] = numberAt(sum, end)
    for (let k = end - 1; k >= start; k -= 1) least[k] = Math.min(numberAt(sum, k), numberAt(least, k + 1))
    let best: readonly [number, number] | null = null
    let bins = moreThan
    for (let from = start; from + bins < end; from += 1) {
      const limit = numberAt(sum, from) + slackMm2
      if (numberAt(least, from + bins + 1) > limit) continue
      while (from + bins < end && numberAt(least, from + bins + 1) <= limit) bins += 1
      best = [from, from + bins]
    }
    return best
  }
}

/** Half the width of a tapered strip that holds over the whole bin. */
function halfIn(bin: number, { half, taper }: BinStrip, { startMm, binMm }: Bins): number {
  if (taper === 0) return half
  const from = startMm + bin * binMm
  return Math.max(0, half - taper * Math.max(Math.abs(from), Math.abs(from + binMm)))
}
