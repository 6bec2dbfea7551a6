import { useStore } from 'zustand'
import { computePlan, type Plan, type PlanResult } from '../core/plan'
import { planStore } from '../state/planStore'
import { sessionStore } from '../state/sessionStore'

const results = new WeakMap<Plan, PlanResult>()

/** Every result of a plan, worked out once for each plan object: plans are never changed in place. */
export function planResultOf(plan: Plan): PlanResult {
  const known = results.get(plan)
  if (known) return known
  const result = computePlan(plan)
  results.set(plan, result)
  return result
}

/** The results of what is on screen: the draft of a running gesture, else the plan. */
export function usePlanResult(): PlanResult {
  const plan = useStore(planStore, (state) => state.plan)
  const draft = useStore(sessionStore, (session) => session.draft)
  return planResultOf(draft ?? plan)
}
