import { useStore } from 'zustand'
import { computePlan, type Plan, type PlanResult } from '../core/plan'
import { planStore } from '../state/planStore'
import { KNOWN_ANSWERS, pourStore } from '../state/pourDesk'
import { sessionStore } from '../state/sessionStore'

const results = new WeakMap<Plan, { readonly answered: number; readonly result: PlanResult }>()

/**
 * Every result of a plan, worked out once for each plan object (plans are never changed in place) and again when a
 * worker has answered.
 */
export function planResultOf(plan: Plan): PlanResult {
  const { answered } = pourStore.getState()
  const known = results.get(plan)
  if (known?.answered === answered) return known.result
  const result = computePlan(plan, KNOWN_ANSWERS)
  results.set(plan, { answered, result })
  return result
}

/** The results of what is on screen: the draft of a running gesture, else the plan. */
export function usePlanResult(): PlanResult {
  const plan = useStore(planStore, (state) => state.plan)
  const draft = useStore(sessionStore, (session) => session.draft)
  useStore(pourStore, ({ answered }) => answered)
  return planResultOf(draft ?? plan)
}
