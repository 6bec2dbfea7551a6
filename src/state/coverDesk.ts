import { createStore } from 'zustand/vanilla'
import type { CoverFindings, CoverKind, CoverTask, SearchState } from '../core/layout'
import type { InputProblem } from '../core/units'
import { CoverClient, JobProblem } from '../workers'

/** What is known of one search. */
export interface CoverEntry {
  /** The last news of it. */
  readonly state: SearchState<CoverFindings[CoverKind]> | null
  readonly status: 'running' | 'done' | 'cancelled' | 'failed'
  /** 0 to 1. */
  readonly fraction: number
  readonly problem: InputProblem | null
}

interface CoverState {
  readonly entries: ReadonlyMap<string, CoverEntry>
}

/** Answers by what was asked: a cache that may vanish at any time; nothing of it is saved. */
export const coverStore = createStore<CoverState>(() => ({ entries: new Map() }))

/** Answers kept: those of thirty slabs, several times over. */
const ENTRIES_KEPT = 400

const client = new CoverClient()
const running = new Map<string, AbortController>()

/** Stands for a task: the text itself, so that no two tasks share it. */
export const coverKey = (task: CoverTask): string => JSON.stringify(task)

function patch(key: string, change: Partial<CoverEntry>): void {
  coverStore.setState(({ entries }) => {
    const before = entries.get(key) ?? { state: null, status: 'running', fraction: 0, problem: null }
    const after = new Map(entries).set(key, { ...before, ...change })
    const [oldest] = after.keys()
    if (after.size > ENTRIES_KEPT && oldest !== undefined) after.delete(oldest)
    return { entries: after }
  })
}

/** Sees to it that a task is answered; one that is known, running or cancelled is left alone. */
export async function askCover(key: string, task: CoverTask): Promise<void> {
  if (coverStore.getState().entries.has(key)) return
  const abort = new AbortController()
  running.set(key, abort)
  patch(key, { status: 'running' })
  try {
    const state = await client.search(task, {
      signal: abort.signal,
      onIncumbent: (found, fraction) => patch(key, { state: found, fraction }),
    })
    patch(key, { state, status: 'done', fraction: 1 })
  } catch (error) {
    if (abort.signal.aborted) patch(key, { status: 'cancelled' })
    else {
      const reason = { code: 'cover-worker-failed', values: { reason: String(error) } }
      patch(key, { status: 'failed', problem: error instanceof JobProblem ? error.problem : reason })
    }
  } finally {
    running.delete(key)
  }
}

/** Ends a search at once; what it has found stays. */
export const cancelCover = (key: string): void => running.get(key)?.abort()

/** Forgets a search that was cancelled or failed, so that it can be asked for again. */
export const forgetCover = (key: string): void =>
  coverStore.setState(({ entries }) => ({
    entries: new Map([...entries].filter(([other]) => other !== key)),
  }))
