import type { LostPart, Plan } from '../core/plan'
import { rememberPlan } from './lastPlan'
import { planStore, showPlan } from './planStore'
import { lookAtPlan, sessionStore } from './sessionStore'
import { TAB_ID, tellTabs } from './tabLink'

/** What saving must know of the plan on the bench. */
export interface BenchRecord {
  /** Of the stored plan that the bench's grew from; null while it is not stored. */
  readonly revision: number | null
  readonly savedAtMs: number
  /** The plan as it was last stored or opened: only a different one is saved. */
  readonly savedPlan: Plan | null
  /** The plan as it was last saved to a file: it may leave the bench even where the browser stores nothing. */
  readonly filedPlan: Plan | null
}

const NOT_STORED: BenchRecord = { revision: null, savedAtMs: 0, savedPlan: null, filedPlan: null }

/** The blank plan that a page starts with is stored once something is in it. */
let record: BenchRecord = { ...NOT_STORED, savedPlan: planStore.getState().plan }

export const benchRecord = (): BenchRecord => record

/** For a plan in which there is nothing to lose yet. */
export const NOTHING_TO_STORE = { revision: null, savedAtMs: 0 } as const

export const noteOnBench = (changes: Partial<BenchRecord>): void => {
  record = { ...record, ...changes }
}

/**
 * Puts a plan on the bench with a fresh history, looks at it, and tells the other tabs.
 * @param stored which stored plan it is, with revision null one that need not be stored before it changes; null: it is
 *        to be stored at once
 * @param lost what could not be kept of it
 */
export function putOnBench(
  plan: Plan,
  stored: Pick<BenchRecord, 'revision' | 'savedAtMs'> | null,
  lost: readonly LostPart[] = [],
): void {
  const { revision, savedAtMs } = stored ?? NOT_STORED
  record = { revision, savedAtMs, savedPlan: stored === null ? null : plan, filedPlan: null }
  lookAtPlan(plan)
  sessionStore.setState({ lost })
  showPlan(plan, revision === null ? { kind: 'unsaved' } : { kind: 'saved', atMs: savedAtMs })
  rememberPlan(plan.id)
  tellTabs({ kind: 'opened', planId: plan.id, tabId: TAB_ID })
}
