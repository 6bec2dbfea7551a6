import { useEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { CoverFindings, CoverKind, CoverTask, SearchState } from '../../../core/layout'
import type { InputProblem } from '../../../core/units'
import { askCover, coverKey, coverStore, forgetCover } from '../../../state/coverDesk'

export interface Found<K extends CoverKind> {
  readonly key: string
  readonly state: SearchState<CoverFindings[K]> | null
  readonly status: 'running' | 'done' | 'cancelled' | 'failed'
  readonly fraction: number
  readonly problem: InputProblem | null
  readonly again: () => void
}

/** What a search has found so far; it is asked for while this is shown. Null: nothing to ask. */
export function useCover<K extends CoverKind>(task: Extract<CoverTask, { kind: K }> | null): Found<K> | null {
  const key = useMemo(() => (task === null ? null : coverKey(task)), [task])
  const entry = useStore(coverStore, ({ entries }) => (key === null ? undefined : entries.get(key)))
  useEffect(() => {
    if (task !== null && key !== null && entry === undefined) void askCover(key, task)
  }, [task, key, entry])
  if (key === null) return null
  return {
    key,
    // A task's kind tells what its search finds.
    state: (entry?.state ?? null) as SearchState<CoverFindings[K]> | null,
    status: entry?.status ?? 'running',
    fraction: entry?.fraction ?? 0,
    problem: entry?.problem ?? null,
    again: () => forgetCover(key),
  }
}
