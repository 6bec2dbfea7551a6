import { InvariantError } from '../../units'
import { allowedAngles, type AngleRange, HALF_TURN, partMiddles } from './angleRange'
import { BoundHeap } from './boundHeap'
import type { EdgeSet } from './edgeSet'
import { oneEdgeWork } from './keptOneEdge'
import type { KeptTable, KeptTableTask } from './keptTableTask'
import { type Search, searchOf, type SearchLedger, type SearchWork } from './searchState'
import { runLengthMm } from './stripBox'
import { rectanglePose } from './tablePose'
import { BIN_MM, outlineEdges, type WidthProfile, widthProfile } from './widthProfile'

/** Narrower boxes of directions cannot be told apart: bins and rough edges blur more than the turn does. */
const LEAST_HALF_RAD = 1e-5
const FIRST_STEP_RAD = (2 * Math.PI) / 180

interface AngleBox {
  readonly angleRad: number
  readonly halfRad: number
  readonly bound: number
}

/**
 * The longest table, longer than its least width, that keeps one or both live edges: all of it wood, voids apart, and no resin outside the wood.
 * @returns a search that may end with more than the tolerance unproved where the edge is rough; its bound says by how much
 * @throws InvariantError when the width is not positive or the tolerance below 2 mm
 *
 * Method, both: for a direction the longest run of crosscuts that are wide enough is read off the width profile; only the
 * direction is searched, by branch and bound on the widest that any crosscut near a direction can be. One: the longest
 * table of the least width, whose sawn side is then moved out as far as whole wood goes. Rules: LAY-19.
 */
export function keptTable(task: KeptTableTask): Search<KeptTable> {
  const { leastWidthMm, toleranceMm } = task
  if (!(leastWidthMm > 0) || !(toleranceMm >= 2)) {
    throw new InvariantError('a kept table needs a least width and a tolerance', {
      leastWidthMm,
      toleranceMm,
    })
  }
  return searchOf((ledger) =>
    task.keep === 'one' ? oneEdgeWork(task, ledger) : new BothEdges(task, ledger).work(),
  )
}

class BothEdges {
  readonly #task: KeptTableTask
  readonly #ledger: SearchLedger<KeptTable>
  readonly #outline: EdgeSet
  readonly #profile: WidthProfile
  readonly #angles: AngleRange

  constructor(task: KeptTableTask, ledger: SearchLedger<KeptTable>) {
    const { wood, grain } = task
    this.#task = task
    this.#ledger = ledger
    this.#angles = allowedAngles(grain, HALF_TURN)
    this.#outline = outlineEdges(wood)
    this.#profile = widthProfile(wood)
  }

  *work(): SearchWork {
    const heap = new BoundHeap<AngleBox>()
    const span = this.#angles.toRad - this.#angles.fromRad
    const parts = Math.max(1, Math.ceil(span / FIRST_STEP_RAD))
    for (const angleRad of partMiddles(this.#angles, parts)) {
      this.#judge({ angleRad, halfRad: span / parts / 2, bound: Infinity }, heap)
      yield
    }
    while (heap.bound > this.#needMm + this.#task.toleranceMm) {
      const box = heap.pop()
      if (box === undefined) break
      if (box.halfRad < LEAST_HALF_RAD) {
        heap.push(box)
        break
      }
      const half = box.halfRad / 2
      for (const d of [-half, half]) this.#judge({ ...box, angleRad: box.angleRad + d, halfRad: half }, heap)
      this.#ledger.limit(Math.max(heap.bound, this.#needMm))
      yield
    }
    this.#ledger.limit(Math.max(heap.bound, this.#needMm))
  }

  get #needMm(): number {
    return Math.max(this.#ledger.value, this.#task.leastWidthMm)
  }

  #judge(box: AngleBox, heap: BoundHeap<AngleBox>): void {
    this.#ledger.spend(2)
    this.#profile.fillWidest(this.#outline, box.angleRad, box.halfRad)
    const widest = this.#profile.longestRun(this.#task.leastWidthMm)
    if (widest === null) return
    const bound = Math.min(box.bound, (runLengthMm(widest) + 2 * BIN_MM) / Math.cos(box.halfRad))
    if (bound <= this.#needMm) return
    heap.push({ ...box, bound })
    this.#try(box.angleRad)
  }

  #try(angleRad: number): void {
    const { wood, leastWidthMm } = this.#task
    this.#profile.fillWidths(this.#outline, angleRad)
    const run = this.#profile.longestRun(leastWidthMm)
    if (run === null || runLengthMm(run) < leastWidthMm) return
    const lengthMm = runLengthMm(run)
    this.#ledger.offer(lengthMm, () => {
      const widths = this.#profile.widthsOver(run)
      const lowMm = this.#profile.edgesOver(this.#outline, angleRad, run).meanLowMm
      const size = { lengthMm, widthMm: widths.meanMm }
      return {
        lengthMm,
        leastWidthMm: widths.leastMm,
        meanWidthMm: widths.meanMm,
        liveSides: ['far', 'near'],
        pose: rectanglePose(wood.pivot, angleRad, [run.fromMm, lowMm], size),
      }
    })
  }
}
