import { useStore } from 'zustand'
import { computePlan, type Plan, type PlanResult } from '../core/plan'
import { planStore } from '../state/planStore'
import { buildStore } from '../state/buildDesk'
import { answersSoFar, KNOWN_ANSWERS } from '../state/knownAnswers'
import { pourStore } from '../state/pourDesk'
import { sessionStore } from '../state/sessionStore'

interface Known {
  readonly answered: number
  readonly isDraft: boolean
  readonly result: PlanResult
}

const results = new WeakMap<Plan, Known>()

/**
 * Every result of a plan, worked out once for each plan object (plans are never changed in place) and again when a
 * worker has answered. Of a running gesture's draft it leaves out what cannot keep up with a finger.
 */
export function planResultOf(plan: Plan): PlanResult {
  const answered = answersSoFar()
  const isDraft = sessionStore.getState().draft === plan
  const known = results.get(plan)
  if (known?.answered === answered && known.isDraft === isDraft) return known.result
  const result = computePlan(plan, { ...KNOWN_ANSWERS, isDraft })
  results.set(plan, { answered, isDraft, result })
  return result
}

/** The results of what is on screen: the draft of a running gesture, else the plan. */
export function usePlanResult(): PlanResult {
  const plan = useStore(planStore, (state) => state.plan)
  const draft = useStore(sessionStore, (session) => session.draft)
  useStore(pourStore, ({ answered }) => answered)
  useStore(buildStore, ({ answered }) => answered)
  return planResultOf(draft ?? plan)
}
