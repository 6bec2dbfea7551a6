import { createStore } from 'zustand/vanilla'
import { blankPlan, type Plan } from '../core/plan'
import type { InputProblem } from '../core/units'
import { freshHistory, type History } from './history'
import { newId } from './newId'

export type SaveStatus =
  | { readonly kind: 'saved'; readonly atMs: number }
  | { readonly kind: 'saving' }
  | { readonly kind: 'unsaved' }
  | { readonly kind: 'failed'; readonly problem: InputProblem }
  /** Another tab has saved this plan in the meantime: the maker chooses whose is kept. */
  | { readonly kind: 'conflict'; readonly theirSavedAtMs: number }

export interface PlanState extends History {
  readonly save: SaveStatus
}

/** The plan on the bench. It changes by `run`, `undo`, `redo` and by opening another plan, nowhere else. */
export const planStore = createStore<PlanState>(() => ({
  ...freshHistory(blankPlan(newId(), newId())),
  save: { kind: 'unsaved' },
}))

/** Puts another plan on the bench; its history starts afresh. */
export const showPlan = (plan: Plan, save: SaveStatus): void => {
  planStore.setState({ ...freshHistory(plan), save }, true)
}
