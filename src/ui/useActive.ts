import { useStore } from 'zustand'
import type { Option, Plan, Slab } from '../core/plan'
import { planStore } from '../state/planStore'
import { sessionStore } from '../state/sessionStore'

/** The plan as it is to be shown: the draft of a running gesture, else the plan. */
export function useShownPlan(): Plan {
  const plan = useStore(planStore, (state) => state.plan)
  const draft = useStore(sessionStore, (session) => session.draft)
  return draft ?? plan
}

/** The slab that is worked on: the chosen one, else the first. */
export function useSlab(): Slab | null {
  const plan = useShownPlan()
  const slabId = useStore(sessionStore, (session) => session.slabId)
  return plan.slabs.find(({ id }) => id === slabId) ?? plan.slabs[0] ?? null
}

/** The option that is worked on: the chosen one, else the first. */
export function useOption(): Option | null {
  const plan = useShownPlan()
  const optionId = useStore(sessionStore, (session) => session.optionId)
  return plan.options.find(({ id }) => id === optionId) ?? plan.options[0] ?? null
}
