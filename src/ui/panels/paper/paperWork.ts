import { gatherTakeAway, type PlanResult, sheetText, type TakeAwayInput } from '../../../core/plan'
import { planStore } from '../../../state/planStore'
import { sessionStore } from '../../../state/sessionStore'
import { planResultOf } from '../../usePlanResult'

/** The day in words, so that it is read alike everywhere. */
export const todayText = (): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date())

export interface PaperWork {
  readonly input: TakeAwayInput
  readonly result: PlanResult
}

/** What files and templates are made from, at this moment; null while the table is not laid on a slab. */
export function paperWork(): PaperWork | null {
  const { plan } = planStore.getState()
  const { optionId, display } = sessionStore.getState()
  const option = plan.options.find(({ id }) => id === optionId) ?? plan.options[0]
  const slab = plan.slabs.find(({ id }) => id === option?.footprint?.slabId)
  if (option === undefined || slab === undefined) return null
  const result = planResultOf(plan)
  const input = gatherTakeAway({
    plan,
    option,
    slab,
    result,
    display,
    dateText: todayText(),
    text: sheetText,
  })
  return input === null ? null : { input, result }
}
