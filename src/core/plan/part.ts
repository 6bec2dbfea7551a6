import type { Issue } from './issue'

/** A figure, the issues that keep it from being worked out, or a promise that a worker is on it. */
export type Part<T> =
  | { readonly state: 'ready'; readonly value: T }
  | { readonly state: 'blocked'; readonly because: readonly string[] }
  | { readonly state: 'pending' }

/** A part together with what was found on the way to it. */
export interface Found<T> {
  readonly part: Part<T>
  readonly issues: readonly Issue[]
}

export const ready = <T>(value: T, issues: readonly Issue[] = []): Found<T> => ({
  part: { state: 'ready', value },
  issues,
})

/** Blocked by issues of its own. */
export const blockedBy = (issues: readonly Issue[]): Found<never> => ({
  part: {
    state: 'blocked',
    because: issues.filter(({ severity }) => severity === 'blocker').map(({ id }) => id),
  },
  issues,
})

/** Blocked, or waiting, because an earlier part is. */
export function after<T, R>(earlier: Part<T>, work: (value: T) => Found<R>): Found<R> {
  return earlier.state === 'ready' ? work(earlier.value) : { part: earlier, issues: [] }
}
