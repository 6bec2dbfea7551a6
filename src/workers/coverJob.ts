import { coverProgress, coverSearch } from '../core/layout'
import type { FromCover, ToCover } from './coverProtocol'

/** Between two looks at the clock; the dearest take a few hundred microseconds each. */
const EVALUATIONS_PER_STEP = 100

/** The page hears of what is new at most this often. */
const NEWS_EVERY_MS = 80

/**
 * Does one search to its end, telling what it finds on the way.
 * Knows nothing of workers, so that it can be tested without one.
 */
export function runCoverJob(
  { jobId, task }: ToCover,
  reply: (message: FromCover) => void,
  nowMs: () => number,
): void {
  try {
    const search = coverSearch(task)
    if (!search.ok) {
      reply({ kind: 'failed', jobId, problem: search.problem })
      return
    }
    let state = search.value.step(EVALUATIONS_PER_STEP)
    let toldAtMs = nowMs()
    while (!state.isDone) {
      if (nowMs() - toldAtMs >= NEWS_EVERY_MS) {
        reply({ kind: 'incumbent', jobId, state: withoutTrace(state), fraction: coverProgress(state) })
        toldAtMs = nowMs()
      }
      state = search.value.step(EVALUATIONS_PER_STEP)
    }
    reply({ kind: 'done', jobId, state: withoutTrace(state) })
  } catch (error) {
    reply({
      kind: 'failed',
      jobId,
      problem: { code: 'cover-worker-failed', values: { reason: String(error) } },
    })
  }
}

/** The trace is for tests; it would be copied with every message. */
const withoutTrace = <S extends { readonly trace: readonly unknown[] }>(state: S): S => ({
  ...state,
  trace: [],
})
