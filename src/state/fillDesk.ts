import type { FillFinding, FillTask } from '../core/layout'
import { JobProblem } from '../workers'
import { FillClient } from '../workers/fillClient'
import { type FillEntry, fillStore } from './fillStore'

/** How long a search goes on getting better. After ten seconds it rarely gains more than a hundredth. */
const SEARCH_MS = 10_000

const client = new FillClient()
let running: { readonly key: string; readonly abort: AbortController } | null = null

function patch(key: string, change: Partial<FillEntry>): void {
  fillStore.setState(({ entry }) => (entry?.key === key ? { entry: { ...entry, ...change } } : {}))
}

const filledMm2 = (finding: FillFinding | null): number => finding?.proposals[0]?.filledMm2 ?? -1

/** A search from another start does not always do better than the one before. */
const betterOf = (known: FillFinding | null, found: FillFinding | null): FillFinding | null =>
  filledMm2(known) > filledMm2(found) ? known : found

function endedBy(error: unknown, isCancelled: boolean): Partial<FillEntry> {
  if (isCancelled) return { status: 'cancelled' }
  const reason = { code: 'fill-worker-failed', values: { reason: String(error) } }
  return { status: 'failed', problem: error instanceof JobProblem ? error.problem : reason }
}

/** Searches, telling the store what it finds on the way. The newest search takes the place of the one before. */
export async function askFill(key: string, task: FillTask, forMs = SEARCH_MS): Promise<void> {
  running?.abort.abort()
  const abort = new AbortController()
  const before = fillStore.getState().entry
  const known = before?.key === key ? before.finding : null
  running = { key, abort }
  const isNewest = (): boolean => running?.abort === abort
  fillStore.setState({ entry: { key, finding: known, status: 'running', fraction: 0, problem: null } })
  try {
    const state = await client.search(
      { task, forMs },
      {
        signal: abort.signal,
        onIncumbent: ({ incumbent }, fraction) => {
          if (isNewest()) patch(key, { finding: betterOf(known, incumbent), fraction })
        },
      },
    )
    if (isNewest()) patch(key, { finding: betterOf(known, state.incumbent), status: 'done', fraction: 1 })
  } catch (error) {
    if (isNewest()) patch(key, endedBy(error, abort.signal.aborted))
  } finally {
    if (isNewest()) running = null
  }
}

/** Stops the search; what it has found so far stays. */
export const cancelFill = (): void => running?.abort.abort()
