import { type FillFinding, fillSearch, type FillTask, type SearchState } from '../core/layout'
import type { FromSearch, ToSearch } from './searchDesks'

/** A search that ends by the clock of whoever waits for it. */
export interface FillOrder {
  readonly task: FillTask
  readonly forMs: number
}

/** Between two looks at the clock: a few milliseconds' worth. */
const EVALUATIONS_PER_STEP = 200

/** The page hears of progress at most this often; a better proposal is told at once. */
const NEWS_EVERY_MS = 80

/**
 * Does one search until its time is up, telling what it finds on the way.
 * Knows nothing of workers, so that it can be tested without one.
 */
export function runFillJob(
  { jobId, task: order }: ToSearch<FillOrder>,
  reply: (message: FromSearch<SearchState<FillFinding>>) => void,
  nowMs: () => number,
): void {
  try {
    const startMs = nowMs()
    const search = fillSearch(order.task)
    if (!search.ok) {
      reply({ kind: 'failed', jobId, problem: search.problem })
      return
    }
    let state = search.value.step(EVALUATIONS_PER_STEP)
    let [told, toldAtMs] = [state.incumbent, startMs]
    for (let now = nowMs(); !state.isDone && now - startMs < order.forMs; now = nowMs()) {
      if (state.incumbent !== told || now - toldAtMs >= NEWS_EVERY_MS) {
        const fraction = Math.min(1, (now - startMs) / order.forMs)
        reply({ kind: 'incumbent', jobId, state: { ...state, trace: [] }, fraction })
        ;[told, toldAtMs] = [state.incumbent, now]
      }
      state = search.value.step(EVALUATIONS_PER_STEP)
    }
    // The trace is for tests; it would be copied with every message.
    reply({ kind: 'done', jobId, state: { ...state, trace: [] } })
  } catch (error) {
    reply({
      kind: 'failed',
      jobId,
      problem: { code: 'fill-worker-failed', values: { reason: String(error) } },
    })
  }
}
