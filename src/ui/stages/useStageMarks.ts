import { usePlanResult } from '../usePlanResult'
import { useOption, useShownPlan, useSlab } from '../useActive'
import { isAnswerDoubted, type MarkInput, type StageMarks, stageMarks } from './stageMarks'

function useMarkInput(): MarkInput {
  const plan = useShownPlan()
  const result = usePlanResult()
  const slab = useSlab()
  const option = useOption()
  return { plan, result, slabId: slab?.id ?? null, optionId: option?.id ?? null }
}

/** The marks of the stage row, for the slab and option worked on. */
export const useStageMarks = (): StageMarks => stageMarks(useMarkInput())

/** Whether the verdict stands on a size in doubt, or on a piece that lies on wood. */
export const useAnswerDoubted = (): boolean => isAnswerDoubted(useMarkInput())
