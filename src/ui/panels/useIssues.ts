import { describeIssue, type Issue } from '../../core/plan'
import type { StageName } from '../stages/stageNames'
import { stageOfIssue } from '../stages/stageOfIssue'
import { useDisplay } from '../text/useDisplay'
import { useOption, useSlab } from '../useActive'
import { usePlanResult } from '../usePlanResult'

/** Issues of the slab and option worked on, the gravest first. */
export function useIssues(): readonly Issue[] {
  const { issues } = usePlanResult()
  const slabId = useSlab()?.id
  const optionId = useOption()?.id
  const rank = { blocker: 0, warning: 1, note: 2 }
  return issues
    .filter(({ at: [where, id] }) => id === (where === 'slabs' ? slabId : optionId))
    .toSorted((a, b) => rank[a.severity] - rank[b.severity])
}

export const useStageIssues = (stage: StageName): readonly Issue[] =>
  useIssues().filter((issue) => stageOfIssue(issue.code) === stage)

/** The sentence to show under a field, for the first issue that sits at or under a place in the plan. */
export function useIssueAt(): (...path: readonly string[]) => string | undefined {
  const issues = useIssues()
  const display = useDisplay()
  return (...path) => {
    const issue = issues.find(({ at }) => path.every((step, index) => at[index] === step))
    return issue === undefined ? undefined : describeIssue(issue, display)
  }
}
