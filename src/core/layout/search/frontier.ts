import { type Isometry, tablePoint } from '../../geometry'
import { InvariantError } from '../../units'
import type { GrainLimit } from './angleRange'
import { largestShape } from './largestShape'
import { LEAST_TABLE_MM, type LargestTable, largestTableWork } from './largestTable'
import { type Search, SearchLedger, searchOf, type SearchWork } from './searchState'
import type { SearchWood } from './searchWood'

export interface FrontierTask {
  readonly wood: SearchWood
  /** Ascending, mm; see `frontierWidths`. */
  readonly widthsMm: readonly number[]
  readonly resinShare: number
  readonly grain: GrainLimit | null
  /** Each length is proved to this, mm. */
  readonly toleranceMm: number
  /** For each width; where it does not do, the point's bound says how much is left open. */
  readonly mostEvaluations?: number
}

export interface FrontierPoint {
  readonly widthMm: number
  /** 0 when no table of this width fits. */
  readonly lengthMm: number
  /** No table of this width is longer, mm. */
  readonly boundMm: number
  /** Whether the search for this width has ended. */
  readonly isDone: boolean
  /** Null when no table of this width fits. */
  readonly pose: Isometry | null
}

/** So many widths from the narrowest to the widest, evenly spaced. @throws InvariantError for fewer than two */
export function frontierWidths(narrowestMm: number, widestMm: number, count = 16): readonly number[] {
  if (!(count >= 2) || !(widestMm > narrowestMm) || !(narrowestMm > 0)) {
    throw new InvariantError('a frontier runs between two widths', { narrowestMm, widestMm, count })
  }
  const step = (widestMm - narrowestMm) / (count - 1)
  return Array.from({ length: count }, (_, k) => narrowestMm + k * step)
}

/** A frontier that was not asked for certain widths begins at this share of the widest. */
const NARROWEST_SHARE = 0.4
/** Evaluations after which the widest is taken as found; it only says where the curve ends. */
const SPAN_EVALUATIONS = 30_000

/**
 * Widths for a frontier of which nothing is known yet: up to the side of the largest square.
 * @returns null when the wood is too small for any table
 */
export function spanningWidths(
  wood: SearchWood,
  grain: GrainLimit | null,
  count = 16,
): readonly number[] | null {
  const side = wood.radiusMm
  const outline = [tablePoint(0, 0), tablePoint(side, 0), tablePoint(side, side), tablePoint(0, side)]
  const square = largestShape({ wood, outline, growth: 'factor', grain, tolerance: 0.002 })
  if (!square.ok) return null
  const found = square.value.step(SPAN_EVALUATIONS).value * side
  return found > LEAST_TABLE_MM / 2 ? frontierWidths(NARROWEST_SHARE * found, found, count) : null
}

/**
 * The longest table for each of several widths.
 * @returns a search whose incumbent is one point for each width, ascending, as far as known; its value is the sum of the
 *   lengths and its bound the sum of their bounds
 *
 * Method: from the widest down, each begun from the place of its wider neighbour, where it fits already. Rules: LAY-16.
 */
export function frontier(task: FrontierTask): Search<readonly FrontierPoint[]> {
  return searchOf((ledger) => frontierWork(task, ledger))
}

function* frontierWork(task: FrontierTask, ledger: SearchLedger<readonly FrontierPoint[]>): SearchWork {
  const points = new Map<number, FrontierPoint>()
  const spentMm = { value: 0, bound: 0 }
  let wider: LargestTable | null = null
  for (const [done, widthMm] of task.widthsMm.toReversed().entries()) {
    const own = new SearchLedger<LargestTable>()
    const work = largestTableWork({ ...task, widthMm, startAt: wider === null ? [] : [wider.place] }, own)
    const openMm = (task.widthsMm.length - 1 - done) * 2 * task.wood.radiusMm
    let spent = 0
    for (let isDone = false; !isDone;) {
      isDone = work.next().done === true
      ledger.spend(own.evaluations - spent)
      spent = own.evaluations
      points.set(widthMm, pointOf(widthMm, own, isDone))
      report(ledger, points, task.widthsMm, spentMm.value + Math.max(0, own.value))
      ledger.limit(spentMm.bound + own.bound + openMm)
      yield
    }
    wider = own.incumbent ?? wider
    spentMm.value += Math.max(0, own.value)
    spentMm.bound += own.bound
  }
}

const pointOf = (widthMm: number, own: SearchLedger<LargestTable>, isDone: boolean): FrontierPoint => ({
  widthMm,
  lengthMm: own.incumbent?.lengthMm ?? 0,
  boundMm: own.bound,
  isDone,
  pose: own.incumbent?.pose ?? null,
})

/** The same sum with a new bound is news, too: the list is taken as it is. */
function report(
  ledger: SearchLedger<readonly FrontierPoint[]>,
  points: ReadonlyMap<number, FrontierPoint>,
  widthsMm: readonly number[],
  valueMm: number,
): void {
  const listed = widthsMm.flatMap((widthMm) => points.get(widthMm) ?? [])
  if (!ledger.offer(valueMm, () => listed)) ledger.incumbent = listed
}
