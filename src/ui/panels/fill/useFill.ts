import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { FillLimits, FillTask } from '../../../core/layout'
import { fillTaskOf, type OptionResult } from '../../../core/plan'
import { type FillEntry, fillStore } from '../../../state/fillStore'
import { planStore } from '../../../state/planStore'
import { readyValue } from '../../readyValue'
import { planResultOf } from '../../usePlanResult'

/** What the maker allows the search; the least joint and the kerf are the option's own. */
export type FillWishes = Pick<FillLimits, 'mayTurnOver' | 'grainWithinRad'>

export interface FillQuestion {
  /** Stands for all that is asked but the search's start. */
  readonly key: string
  readonly slabId: string
  readonly result: OptionResult
  readonly task: (seed: number) => FillTask
}

/** What the search is asked for an option as it is kept: while something is dragged, nothing changes. */
export function useFillQuestion(optionId: string, wishes: FillWishes): FillQuestion | null {
  const plan = useStore(planStore, (state) => state.plan)
  return useMemo(() => {
    const option = plan.options.find(({ id }) => id === optionId)
    const results = planResultOf(plan)
    const result = results.options.get(optionId)
    const slabId = option?.footprint?.slabId
    const shape = readyValue(results.slabs.get(slabId ?? '')?.shape)
    if (option === undefined || result === undefined || slabId === undefined || shape === null) return null
    const task = fillTaskOf({ option, result, shape, limits: wishes, seed: 0 })
    if (task === null) return null
    return {
      key: JSON.stringify([optionId, slabId, task]),
      slabId,
      result,
      task: (seed) => ({ ...task, seed }),
    }
  }, [plan, optionId, wishes])
}

/** The last search, and whether it was about something else. */
export function useFillEntry(question: FillQuestion): {
  readonly entry: FillEntry | null
  readonly isOld: boolean
} {
  const entry = useStore(fillStore, (state) => state.entry)
  const isOld = entry !== null && entry.key !== question.key
  return { entry: isOld ? null : entry, isOld }
}
