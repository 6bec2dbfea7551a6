import { InvariantError } from '../../units'
import { ClearMeter } from './clearMeter'
import { type EdgeSet, edgesOf } from './edgeSet'
import type { SearchWood } from './searchWood'
import { type Bins, binsOver, StripBins } from './stripBins'
import { runLengthMm, type StripAt, type StripBox, type StripMeter, type StripRun } from './stripBox'

/** Lengths are told to this, mm; coarse boxes are judged with wider bins. */
const LEAST_BIN_MM = 1
const MOST_BIN_MM = 32
/** Bins of a fraction of a box's blur: ends cut anywhere in a bin blur the length, too. */
const BIN_PER_BLUR = 0.3
/** A first look at a strip, before it is told to LEAST_BIN_MM. */
const LOOK_BIN_MM = 8

/** So much of the table's width, in its middle, may be open at voids only: no end and no stretch is all resin. */
const CORE_SHARE = 0.5

/**
 * Runs in which resin (along the edges and in voids) takes at most a share of the table, while the middle half of its
 * width stays within the slab's outline. Rules: LAY-15.
 */
export class ResinMeter implements StripMeter {
  readonly greatestMm: number
  readonly overhangMm: number
  readonly #clear: ClearMeter
  readonly #widthMm: number
  readonly #share: number
  readonly #outline: EdgeSet
  readonly #reachMm: number
  readonly #bins: StripBins

  constructor(wood: SearchWood, widthMm: number, share: number) {
    if (!(share > 0 && share < 1)) throw new InvariantError('a resin share lies between 0 and 1', { share })
    this.greatestMm = Math.min(2 * wood.radiusMm, wood.areaMm2 / (widthMm * (1 - share)))
    this.overhangMm = share * widthMm
    this.#clear = new ClearMeter(wood, widthMm)
    this.#widthMm = widthMm
    this.#share = share
    this.#outline = edgesOf(
      wood.regions.map(({ outer }) => ({ outer, holes: [] })),
      wood.pivot,
    )
    this.#reachMm = wood.radiusMm + MOST_BIN_MM
    this.#bins = new StripBins(binsOver(this.#reachMm, LEAST_BIN_MM).count)
  }

  longest(at: StripAt, edges: EdgeSet, atLeastMm: number): StripRun | null {
    const look = this.#runOf(at, edges, LOOK_BIN_MM)
    if (look === null || runLengthMm(look) + 2 * LOOK_BIN_MM < atLeastMm) return null
    const run = this.#runOf(at, edges, LEAST_BIN_MM)
    // Bins round down: without resin the run may be a little longer.
    const clear = this.#clear.longest(at, edges, Math.max(atLeastMm, run === null ? 0 : runLengthMm(run)))
    if (clear !== null) return clear
    return run !== null && runLengthMm(run) >= atLeastMm ? run : null
  }

  #runOf(at: StripAt, edges: EdgeSet, binMm: number): StripRun | null {
    const bins = binsOver(this.#reachMm, binMm)
    this.#fill(at, edges, bins, this.#widthMm / 2, CORE_SHARE * (this.#widthMm / 2), 0)
    return this.#bins.longestRun(bins, this.#share * this.#widthMm * binMm, 0)
  }

  #fill(at: StripAt, edges: EdgeSet, bins: Bins, half: number, core: number, taper: number): void {
    const { angleRad, offsetMm } = at
    this.#bins.fill(edges, { angleRad, offsetMm, half, taper }, bins)
    if (core > 0) this.#bins.bar(this.#outline, { angleRad, offsetMm, half: core, taper }, bins)
  }

  /** A first bound by bins four times as wide: most boxes need no closer look. */
  bound(box: StripBox, needMm: number): number {
    const binMm = Math.min(MOST_BIN_MM, Math.max(LEAST_BIN_MM, BIN_PER_BLUR * box.offsetHalfMm))
    const firstMm = this.#boundBy(4 * binMm, box)
    return firstMm <= needMm ? needMm : Math.max(needMm, Math.min(firstMm, this.#boundBy(binMm, box)))
  }

  /**
   * Method: what lies open in the strip that all strips of the box have in common lies open in each of them, and so with
   * their cores. A table of length ℓ turned by φ holds a run of ℓ·cos φ − width·sin φ of the common strip; its two last
   * bins may be cut anywhere.
   */
  #boundBy(binMm: number, box: StripBox): number {
    const [cos, sin] = [Math.cos(box.angleHalfRad), Math.sin(box.angleHalfRad)]
    const lossMm = (Math.abs(box.offsetMm) + box.offsetHalfMm + this.#widthMm / 2) * (1 / cos - 1)
    const blurMm = box.offsetHalfMm + lossMm
    const half = this.#widthMm / 2 - blurMm
    if (half <= 0) return box.bound
    const bins = binsOver(this.#reachMm, binMm)
    this.#fill(box, box.edges, bins, half, (CORE_SHARE * this.#widthMm) / 2 - blurMm, sin / cos)
    const allowedMm2 = (this.#share * this.#widthMm) / cos
    const slackMm2 = allowedMm2 * (this.#widthMm * sin + 2 * bins.binMm)
    const run = this.#bins.longestRun(bins, allowedMm2 * bins.binMm, slackMm2)
    const runMm = run === null ? 0 : runLengthMm(run)
    return Math.min(box.bound, (runMm + 2 * bins.binMm + this.#widthMm * sin) / cos)
  }

  /** All edges count: those beside the strip say on which side the wood lies. */
  reaching(box: StripBox): EdgeSet {
    return box.edges
  }
}
