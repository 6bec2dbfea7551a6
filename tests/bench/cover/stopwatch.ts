import type { Search, SearchState } from '../../../src/core/layout'

/** Time that this process has had on a core, ms: what other programs take does not count. */
export const cpuMs = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

export interface TimedSearch<T> {
  readonly state: SearchState<T>
  /** Until what was found was within the given distance of the end's. */
  readonly answerMs: number
  /** Until the search was done. */
  readonly totalMs: number
}

/**
 * Runs a search in small steps.
 * @param near how near to the last value an answer is the answer
 */
export function timedSearch<T>(search: Search<T>, near: number, most = Infinity): TimedSearch<T> {
  const startMs = cpuMs()
  const found: { readonly value: number; readonly atMs: number }[] = []
  let state = search.step(1)
  while (!state.isDone && state.evaluations < most) {
    if (state.value > (found.at(-1)?.value ?? -Infinity))
      found.push({ value: state.value, atMs: cpuMs() - startMs })
    state = search.step(25)
  }
  const totalMs = cpuMs() - startMs
  const answer = found.find(({ value }) => value >= state.value - near)
  return { state, answerMs: answer?.atMs ?? totalMs, totalMs }
}

/** Mean time of one call, ms, over at least so many and so long. */
export function meanCallMs(call: () => number, leastCalls: number, leastMs: number): number {
  let [calls, sum] = [0, 0]
  const startMs = cpuMs()
  while (calls < leastCalls || cpuMs() - startMs < leastMs) {
    sum += call()
    calls += 1
  }
  // What was computed is used, so that no engine may leave it out.
  if (Number.isNaN(sum)) throw new Error('a call gave no number')
  return (cpuMs() - startMs) / calls
}
