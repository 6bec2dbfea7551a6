import { useStore } from 'zustand'
import type { BuildResult, Option, Plan, Slab } from '../../../core/plan'
import type { InputProblem } from '../../../core/units'
import { buildStore } from '../../../state/buildDesk'
import { setCosts, setForm, setRoom, setShop, setSlabWood, setStanding } from '../../../state/commands'
import { run } from '../../../state/run'
import { useOption, useShownPlan, useSlab } from '../../useActive'
import { usePlanResult } from '../../usePlanResult'

/** What is shown of a build: the current answer, or the last one marked as old. */
export interface ShownBuild {
  readonly result: BuildResult | null
  readonly isCurrent: boolean
  readonly isBlocked: boolean
  readonly problem: InputProblem | null
}

/** Form, weight, work and price of an option as far as they are known. */
export function useShownBuild(optionId: string): ShownBuild {
  const part = usePlanResult().options.get(optionId)?.build
  const problem = useStore(buildStore, (state) => state.problem)
  const last = useStore(buildStore, (state) => state.lastOf.get(optionId) ?? null)
  if (part?.state === 'ready') {
    return { result: part.value, isCurrent: true, isBlocked: false, problem: null }
  }
  const isPending = part?.state === 'pending'
  return { result: isPending ? last : null, isCurrent: false, isBlocked: !isPending, problem }
}

/** The slab that the option's table lies on; while it lies on none, the one that is worked on. */
export function useBuildSlab(): Slab | null {
  const plan = useShownPlan()
  const option = useOption()
  const worked = useSlab()
  return plan.slabs.find(({ id }) => id === option?.footprint?.slabId) ?? worked
}

export const changeWood = (slabId: string, wood: Partial<Slab['wood']>): void =>
  run(setSlabWood, { slabId, wood })

export const changeRoom = (optionId: string, room: Partial<Option['room']>): void =>
  run(setRoom, { optionId, room })

export const changeForm = (optionId: string, form: Partial<Option['form']>): void =>
  run(setForm, { optionId, form })

export const changeStanding = (optionId: string, standing: Partial<Option['standing']>): void =>
  run(setStanding, { optionId, standing })

export const changeCosts = (optionId: string, costs: Partial<Option['quote']>): void =>
  run(setCosts, { optionId, costs })

export const changeShop = (shop: Partial<Plan['shop']>): void => run(setShop, { shop })
