import type { Isometry } from '../../geometry'
import { InvariantError } from '../../units'
import type { EdgeSet } from './edgeSet'
import { allowedAngles, type GrainLimit, HALF_TURN, partMiddles } from './angleRange'
import { BoundHeap } from './boundHeap'
import { ClearMeter, FIT_TOLERANCE_MM } from './clearMeter'
import { ResinMeter } from './resinMeter'
import { polishedStrip, scannedStrips, type StripPlace } from './stripScan'
import { type Search, searchOf, type SearchLedger, type SearchWork } from './searchState'
import type { SearchWood } from './searchWood'
import { halves, runLengthMm, type StripAt, type StripBox, type StripMeter, type StripRun } from './stripBox'
import { rectanglePose } from './tablePose'

/** Shorter than this is no table, mm. */
export const LEAST_TABLE_MM = 100

export interface LargestTableTask {
  readonly wood: SearchWood
  readonly widthMm: number
  /** Greatest share of the table that may be resin, from 0 (whole wood) to less than 1. */
  readonly resinShare: number
  readonly grain: GrainLimit | null
  /** The search ends when nothing can be longer than the answer by more than this, mm. */
  readonly toleranceMm: number
  /** When set, the search ends as soon as it is known whether a table of this length fits. */
  readonly goalMm?: number
  /** Where to begin instead of scanning, e.g. the answer for a neighbouring width. */
  readonly startAt?: readonly StripPlace[]
  /** The proof is given up after so many evaluations; the bound then says how much is left open. */
  readonly mostEvaluations?: number
  /** Known from elsewhere, mm: nothing is longer. */
  readonly boundMm?: number
}

export interface LargestTable {
  readonly lengthMm: number
  readonly widthMm: number
  /** Pose of the table frame in the slab frame. */
  readonly pose: Isometry
  readonly place: StripPlace
}

/**
 * The longest clear table of a given width.
 * @throws InvariantError when width or tolerance is not positive
 *
 * Method: for a direction and an offset of the strip the longest clear run is exact (`RunFinder`), so only these two are
 * searched: a coarse scan, a climb from its best places, then best-first branch and bound (`runBound`) until what is left
 * cannot be longer by more than the tolerance. Nothing in it is random. Rules: LAY-13, LAY-14.
 */
export function largestTable(task: LargestTableTask): Search<LargestTable> {
  return searchOf((ledger) => largestTableWork(task, ledger))
}

/** The work of `largestTable`, for searches that are made of several. */
export function* largestTableWork(task: LargestTableTask, ledger: SearchLedger<LargestTable>): SearchWork {
  if (!(task.widthMm > 0) || !(task.toleranceMm > 0)) {
    throw new InvariantError('a table needs a width and a tolerance', {
      widthMm: task.widthMm,
      toleranceMm: task.toleranceMm,
    })
  }
  const strips = new TableStrips(task, ledger)
  for (const place of task.startAt ?? []) strips.climb(place)
  yield
  if (!strips.isSettled && (task.startAt ?? []).length === 0) yield* strips.scan()
  yield* strips.prove()
}

class TableStrips {
  readonly #task: LargestTableTask
  readonly #ledger: SearchLedger<LargestTable>
  readonly #meter: StripMeter

  constructor(task: LargestTableTask, ledger: SearchLedger<LargestTable>) {
    this.#task = task
    this.#ledger = ledger
    this.#meter =
      task.resinShare > 0
        ? new ResinMeter(task.wood, task.widthMm, task.resinShare)
        : new ClearMeter(task.wood, task.widthMm)
    ledger.limit(Math.min(task.boundMm ?? Infinity, this.#meter.greatestMm))
  }

  /** Nothing up to this length is of interest any more. */
  get #needMm(): number {
    const goalMm = this.#task.goalMm === undefined ? 0 : this.#task.goalMm - 2 * FIT_TOLERANCE_MM
    return Math.max(this.#ledger.value, goalMm, LEAST_TABLE_MM)
  }

  get isSettled(): boolean {
    const { goalMm, toleranceMm } = this.#task
    if (goalMm !== undefined) return this.#ledger.value >= goalMm - 2 * FIT_TOLERANCE_MM
    return this.#ledger.bound <= this.#ledger.value + toleranceMm
  }

  climb(place: StripPlace): void {
    this.#offer(polishedStrip(place, (at, atLeastMm) => this.#runAt(at, atLeastMm)))
  }

  *scan(): SearchWork {
    const { wood, widthMm } = this.#task
    const places = scannedStrips({
      wood,
      widthMm,
      angles: allowedAngles(this.#task.grain, HALF_TURN),
      overhangMm: this.#meter.overhangMm,
      runAt: (at, atLeastMm) => this.#runAt(at, atLeastMm),
    })
    for (const found of places) {
      yield
      this.climb(found)
      if (this.isSettled) return
    }
  }

  /** Best-first branch and bound over all strips. */
  *prove(): SearchWork {
    const heap = new BoundHeap<StripBox>()
    for (const box of this.#roots()) this.#judge(box, heap)
    while (!this.isSettled) {
      const isTooLong = this.#ledger.evaluations >= (this.#task.mostEvaluations ?? Infinity)
      const box = heap.bound > this.#needMm && !isTooLong ? heap.pop() : undefined
      if (box === undefined) break
      const edges = this.#meter.reaching(box)
      for (const half of halves(box, edges)) this.#judge(half, heap)
      this.#ledger.limit(Math.max(heap.bound, this.#needMm))
      yield
    }
    if (heap.bound <= this.#needMm) this.#ledger.limit(this.#needMm)
  }

  #roots(): readonly StripBox[] {
    const { wood, grain, widthMm } = this.#task
    const angles = allowedAngles(grain, HALF_TURN)
    const span = angles.toRad - angles.fromRad
    const parts = Math.max(1, Math.ceil((2 * span * wood.radiusMm) / widthMm))
    return partMiddles(angles, parts).map((angleRad) => ({
      angleRad,
      angleHalfRad: span / parts / 2,
      offsetMm: 0,
      offsetHalfMm: wood.radiusMm + this.#meter.overhangMm,
      bound: this.#ledger.bound,
      edges: wood.edges,
    }))
  }

  /** Bounds a box, tries its middle, and keeps it if it may still hold something better. */
  #judge(box: StripBox, heap: BoundHeap<StripBox>): void {
    this.#ledger.spend()
    const bound = this.#meter.bound(box, this.#needMm)
    if (bound <= this.#needMm) return
    const run = this.#runAt(box, this.#needMm, box.edges)
    if (run !== null) this.climb({ ...box, run })
    heap.push({ ...box, bound })
  }

  #runAt(at: StripAt, atLeastMm: number, edges: EdgeSet = this.#task.wood.edges): StripRun | null {
    this.#ledger.spend()
    return this.#meter.longest(at, edges, Math.max(1, atLeastMm))
  }

  #offer(place: StripPlace): void {
    const { run, angleRad, offsetMm } = place
    const lengthMm = run === null ? 0 : runLengthMm(run)
    if (run === null || lengthMm < LEAST_TABLE_MM) return
    const { wood, widthMm } = this.#task
    this.#ledger.offer(lengthMm, () => ({
      lengthMm,
      widthMm,
      place,
      pose: rectanglePose(wood.pivot, angleRad, [run.fromMm, offsetMm - widthMm / 2], { lengthMm, widthMm }),
    }))
  }
}
