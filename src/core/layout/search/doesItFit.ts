import { FIT_TOLERANCE_MM } from './clearMeter'
import { type LargestTable, largestTable, type LargestTableTask } from './largestTable'
import type { SearchState } from './searchState'

export type FitAnswer =
  | { readonly kind: 'fits'; readonly table: LargestTable }
  /** Proved: no table of this size lies wholly on the wood. */
  | { readonly kind: 'does-not-fit'; readonly boundMm: number }
  /** The search was not let go on to its end. */
  | { readonly kind: 'not-settled' }

export type FitTask = Pick<LargestTableTask, 'wood' | 'widthMm' | 'resinShare' | 'grain'> & {
  readonly lengthMm: number
}

/** The search for a table of the given size, which ends as soon as it is known whether it fits. */
export const fitSearch = ({ lengthMm, ...task }: FitTask) =>
  largestTable({ ...task, goalMm: lengthMm, toleranceMm: FIT_TOLERANCE_MM })

/** What a fit search has found out. */
export function fitAnswer({ lengthMm }: FitTask, state: SearchState<LargestTable>): FitAnswer {
  const enoughMm = lengthMm - 2 * FIT_TOLERANCE_MM
  if (state.incumbent !== null && state.value >= enoughMm) return { kind: 'fits', table: state.incumbent }
  return state.isDone ? { kind: 'does-not-fit', boundMm: state.bound } : { kind: 'not-settled' }
}

/**
 * Does a table of this size lie wholly on the wood (or with resin up to a share)?
 * @param mostEvaluations a slab that resists longer is 'not-settled'
 * @returns proved either way; never judged from covered area. Rules: LAY-14.
 */
export function doesItFit(task: FitTask, mostEvaluations = 400_000): FitAnswer {
  return fitAnswer(task, fitSearch(task).step(mostEvaluations))
}
