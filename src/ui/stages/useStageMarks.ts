import { usePlanResult } from '../usePlanResult'
import { useOption, useShownPlan, useSlab } from '../useActive'
import { type StageMarks, stageMarks } from './stageMarks'

/** The marks of the stage row, for the slab and option worked on. */
export function useStageMarks(): StageMarks {
  const plan = useShownPlan()
  const result = usePlanResult()
  const slab = useSlab()
  const option = useOption()
  return stageMarks({ plan, result, slabId: slab?.id ?? null, optionId: option?.id ?? null })
}
