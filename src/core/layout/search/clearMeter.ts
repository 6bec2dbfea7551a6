import { RunFinder } from './clearRun'
import { type EdgeSet, edgeSubset } from './edgeSet'
import type { SearchWood } from './searchWood'
import { runLengthMm, type StripAt, type StripBox, type StripMeter, type StripRun } from './stripBox'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/**
 * A table may lie over the edge of the wood by this much along its long sides, mm: less than a saw follows. Without it a
 * table as wide as a straight board would fit nowhere but at one exact angle.
 */
export const FIT_TOLERANCE_MM = 0.02

/** Runs of whole wood. Rules: LAY-13. */
export class ClearMeter implements StripMeter {
  readonly greatestMm: number
  readonly overhangMm = 0
  readonly #finder: RunFinder
  readonly #kept: Int32Array
  readonly #radiusMm: number
  /** What the wood must leave clear; see FIT_TOLERANCE_MM. */
  readonly #stripMm: number

  constructor(wood: SearchWood, widthMm: number) {
    this.greatestMm = 2 * wood.radiusMm
    this.#radiusMm = wood.radiusMm
    this.#finder = new RunFinder(wood.edges)
    this.#kept = new Int32Array(wood.edges.count)
    this.#stripMm = Math.max(widthMm - 2 * FIT_TOLERANCE_MM, widthMm / 2)
  }

  longest({ angleRad, offsetMm }: StripAt, edges: EdgeSet, atLeastMm: number): StripRun | null {
    const strip = { angleRad, offsetMm, halfWidthMm: this.#stripMm / 2, taper: 0 }
    return this.#finder.longest(edges, strip, atLeastMm)
  }

  /**
   * Method: what all strips of the box have in common is a strip that narrows to both sides of the pivot; a table of
   * length ℓ turned by φ against it leaves it a run of at least ℓ·cos φ − width·sin φ.
   */
  bound(box: StripBox, needMm: number): number {
    const [cos, sin] = [Math.cos(box.angleHalfRad), Math.sin(box.angleHalfRad)]
    const lossMm = (Math.abs(box.offsetMm) + box.offsetHalfMm + this.#stripMm / 2) * (1 / cos - 1)
    const halfWidthMm = this.#stripMm / 2 - box.offsetHalfMm - lossMm
    // Where the common strip ends within the wood it says nothing of what lies beyond.
    if (halfWidthMm * cos <= this.#radiusMm * sin) return box.bound
    const strip = { angleRad: box.angleRad, offsetMm: box.offsetMm, halfWidthMm, taper: sin / cos }
    const run = this.#finder.longest(box.edges, strip, Math.max(1, needMm * cos - this.#stripMm * sin))
    return run === null ? needMm : Math.min(box.bound, (runLengthMm(run) + this.#stripMm * sin) / cos)
  }

  reaching(box: StripBox): EdgeSet {
    const { edges, angleRad, offsetMm } = box
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
    const taper = Math.tan(box.angleHalfRad)
    const reachMm =
      (Math.abs(offsetMm) + box.offsetHalfMm + this.#stripMm / 2) / Math.cos(box.angleHalfRad) -
      Math.abs(offsetMm)
    let count = 0
    for (let i = 0; i < edges.count; i += 1) {
      const v1 = numberAt(edges.ay, i) * cos - numberAt(edges.ax, i) * sin - offsetMm
      const v2 = numberAt(edges.by, i) * cos - numberAt(edges.bx, i) * sin - offsetMm
      const u1 = Math.abs(numberAt(edges.ax, i) * cos + numberAt(edges.ay, i) * sin)
      const u2 = Math.abs(numberAt(edges.bx, i) * cos + numberAt(edges.by, i) * sin)
      const reach = reachMm + taper * Math.max(u1, u2)
      if ((v1 > reach && v2 > reach) || (v1 < -reach && v2 < -reach)) continue
      this.#kept[count] = i
      count += 1
    }
    return count < 0.8 * edges.count ? edgeSubset(edges, this.#kept, count) : edges
  }
}
