import { useStore } from 'zustand'
import { civilDay, hourText, type Option, type OptionResult, type PourResult } from '../../../core/plan'
import type { InputProblem } from '../../../core/units'
import { setResin } from '../../../state/commands'
import { planStore } from '../../../state/planStore'
import { pourStore } from '../../../state/pourDesk'
import { run } from '../../../state/run'
import { setDraft } from '../../../state/sessionStore'

/** What is shown of a pour: the current answer, or the last one marked as old. */
export interface ShownPour {
  readonly result: PourResult | null
  readonly isCurrent: boolean
  readonly problem: InputProblem | null
}

/** The pour of an option as far as it is known. */
export function useShownPour(option: OptionResult | undefined): ShownPour {
  const problem = useStore(pourStore, (state) => state.problem)
  const last = useStore(pourStore, (state) => state.lastOf.get(option?.optionId ?? '') ?? null)
  if (option?.pour.state === 'ready') return { result: option.pour.value, isCurrent: true, problem: null }
  return { result: option?.pour.state === 'pending' ? last : null, isCurrent: false, problem }
}

type Resin = Option['resin']

/** Changes something of the resin of an option, in one step. */
export const changeResin = (optionId: string, changes: Partial<Resin>): void =>
  run(setResin, { optionId, resin: changes })

/** Shows how a change would come out, while a handle moves. */
export const tryResin = (optionId: string, changes: Partial<Resin>): void =>
  setDraft(setResin.apply(planStore.getState().plan, { optionId, resin: changes }))

/** Hours of a pour in words: with the day of the calendar once it is settled. */
export const hourWords = (resin: Resin): ((hour: number) => string) => {
  const firstDay = civilDay(resin.start.day)
  return (hour) => hourText(hour, firstDay)
}
