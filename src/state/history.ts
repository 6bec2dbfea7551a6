import type { Plan } from '../core/plan'
import type { Selection } from './sessionStore'

/** The plan as it was before a step (past) or is after it (future), and what the step is called. */
export interface HistoryEntry {
  readonly plan: Plan
  /** Key of the step's name in the catalogue. */
  readonly label: string
  /** What was selected then: who takes a step back has the same thing in hand again. */
  readonly selection: Selection | null
}

export interface History {
  readonly plan: Plan
  /** Oldest first. */
  readonly past: readonly HistoryEntry[]
  /** The next redo first. */
  readonly future: readonly HistoryEntry[]
  /** True once steps had to be forgotten because the limit was reached. */
  readonly historyTrimmed: boolean
}

/** Plans share their structure, so a step costs little; still the list must end somewhere. */
export const HISTORY_LIMIT = 200

export const freshHistory = (plan: Plan): History => ({ plan, past: [], future: [], historyTrimmed: false })

export function withStep(
  history: History,
  plan: Plan,
  label: string,
  selection: Selection | null = null,
): History {
  const past = [...history.past, { plan: history.plan, label, selection }]
  return {
    plan,
    past: past.slice(-HISTORY_LIMIT),
    future: [],
    historyTrimmed: history.historyTrimmed || past.length > HISTORY_LIMIT,
  }
}

/** @param selection what is selected now, for the way forward again */
export function undone(history: History, selection: Selection | null = null): History {
  const step = history.past.at(-1)
  if (step === undefined) return history
  const redo = { plan: history.plan, label: step.label, selection }
  return { ...history, plan: step.plan, past: history.past.slice(0, -1), future: [redo, ...history.future] }
}

/** @param selection what is selected now, for the way back again */
export function redone(history: History, selection: Selection | null = null): History {
  const [step, ...future] = history.future
  if (step === undefined) return history
  const undo = { plan: history.plan, label: step.label, selection }
  return { ...history, plan: step.plan, past: [...history.past, undo], future }
}
