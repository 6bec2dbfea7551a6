import type { EdgeSet } from './edgeSet'

import { isInWood } from './searchWood'
import type { StripAt, StripRun } from './stripBox'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/**
 * A straight strip through the wood: its middle line at `angleRad`, `offsetMm` to the side of the pivot. With a taper it
 * narrows to both sides of the pivot: its half width at u along the line is halfWidthMm − taper·|u|.
 */
export interface Strip extends StripAt {
  readonly halfWidthMm: number
  readonly taper: number
}

/**
 * Longest clear runs of strips through one wood. Holds scratch rows, so that a run costs no memory.
 *
 * Method: every edge is clipped to the strip; its shadow along the line is blocked. A run lies between two shadows, and
 * is wood if its middle is. Exact, holes included. Shadows nearer to each other than the run asked for are one, so that
 * hardly anything is left to sort. An edge that only touches the strip's border blocks nothing.
 */
export class RunFinder {
  readonly #wood: EdgeSet
  readonly #from: Float64Array
  readonly #to: Float64Array
  #shadows = 0
  #clipFrom = 0
  #clipTo = 1

  constructor(wood: EdgeSet) {
    this.#wood = wood
    this.#from = new Float64Array(wood.count + 1)
    this.#to = new Float64Array(wood.count + 1)
  }

  /**
   * @param edges   those of the wood that may reach into the strip
   * @param atLeastMm shorter runs are not of interest, > 0
   * @returns the longest run in wood, or null when none is as long as asked
   */
  longest(edges: EdgeSet, strip: Strip, atLeastMm: number): StripRun | null {
    if (strip.halfWidthMm <= 0) return null
    this.#shadows = 0
    this.#castShadows(edges, strip, atLeastMm)
    this.#sortShadows()
    return this.#longestGap(strip, atLeastMm)
  }

  #castShadows(edges: EdgeSet, strip: Strip, joinMm: number): void {
    const [cos, sin] = [Math.cos(strip.angleRad), Math.sin(strip.angleRad)]
    const { offsetMm, halfWidthMm: half } = strip
    const { ax, ay, bx, by, count } = edges
    for (let i = 0; i < count; i += 1) {
      const v1 = numberAt(ay, i) * cos - numberAt(ax, i) * sin - offsetMm
      const v2 = numberAt(by, i) * cos - numberAt(bx, i) * sin - offsetMm
      if ((v1 >= half && v2 >= half) || (v1 <= -half && v2 <= -half)) continue
      const u1 = numberAt(ax, i) * cos + numberAt(ay, i) * sin
      const u2 = numberAt(bx, i) * cos + numberAt(by, i) * sin
      this.#clipFrom = 0
      this.#clipTo = 1
      if (this.#isClipped(u1, v1, u2, v2, half, strip.taper)) this.#addShadow(u1, u2, joinMm)
    }
  }

  /** Keeps the part of an edge that lies within the strip. @returns whether there is one */
  #isClipped(u1: number, v1: number, u2: number, v2: number, half: number, taper: number): boolean {
    if (taper === 0) return this.#keep(v1 - half, v2 - half) && this.#keep(-v1 - half, -v2 - half)
    const [s1, s2] = [taper * u1, taper * u2]
    return (
      this.#keep(v1 + s1 - half, v2 + s2 - half) &&
      this.#keep(v1 - s1 - half, v2 - s2 - half) &&
      this.#keep(-v1 + s1 - half, -v2 + s2 - half) &&
      this.#keep(-v1 - s1 - half, -v2 - s2 - half)
    )
  }

  /** Keeps where a linear value, `atFrom` at the edge's start and `atTo` at its end, is negative. */
  #keep(atFrom: number, atTo: number): boolean {
    if (atFrom >= 0 && atTo >= 0) return false
    if (atFrom <= 0 && atTo <= 0) return true
    const crossing = atFrom / (atFrom - atTo)
    if (atFrom > 0) this.#clipFrom = Math.max(this.#clipFrom, crossing)
    else this.#clipTo = Math.min(this.#clipTo, crossing)
    return this.#clipFrom < this.#clipTo
  }

  #addShadow(u1: number, u2: number, joinMm: number): void {
    const p = u1 + (u2 - u1) * this.#clipFrom
    const q = u1 + (u2 - u1) * this.#clipTo
    const [from, to] = p < q ? [p, q] : [q, p]
    const last = this.#shadows - 1
    if (last >= 0 && from < numberAt(this.#to, last) + joinMm && to > numberAt(this.#from, last) - joinMm) {
      if (from < numberAt(this.#from, last)) this.#from[last] = from
      if (to > numberAt(this.#to, last)) this.#to[last] = to
      return
    }
    this.#from[this.#shadows] = from
    this.#to[this.#shadows] = to
    this.#shadows += 1
  }

  /** By insertion: there are few, and they come nearly in order. */
  #sortShadows(): void {
    const [starts, ends] = [this.#from, this.#to]
    for (let i = 1; i < this.#shadows; i += 1) {
      const [from, to] = [numberAt(starts, i), numberAt(ends, i)]
      let j = i - 1
      for (; j >= 0 && numberAt(starts, j) > from; j -= 1) {
        starts[j + 1] = numberAt(starts, j)
        ends[j + 1] = numberAt(ends, j)
      }
      starts[j + 1] = from
      ends[j + 1] = to
    }
  }

  #longestGap({ angleRad, offsetMm }: Strip, atLeastMm: number): StripRun | null {
    let best: StripRun | null = null
    let bestMm = atLeastMm
    let reached = numberAt(this.#to, 0)
    for (let i = 1; i < this.#shadows; i += 1) {
      const from = numberAt(this.#from, i)
      if (from - reached >= bestMm && this.#isWood(angleRad, (reached + from) / 2, offsetMm)) {
        best = { fromMm: reached, toMm: from }
        bestMm = from - reached
      }
      reached = Math.max(reached, numberAt(this.#to, i))
    }
    return best
  }

  #isWood(angleRad: number, u: number, v: number): boolean {
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    return isInWood(this.#wood, u * cos - v * sin, u * sin + v * cos)
  }
}
