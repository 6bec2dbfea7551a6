import type { PlanResult } from '../planResult'
import type { Plan } from '../schema'

/** What a worker is asked, not a result of the plan. */
const LEFT_OUT = new Set(['pourTask', 'buildTask'])

function plain(key: string, value: unknown): unknown {
  if (LEFT_OUT.has(key)) return undefined
  return value instanceof Map ? Object.fromEntries(value) : value
}

/**
 * The whole result of a plan as JSON: every part is `ready` with its value, `blocked` with the issues, or `pending`.
 * @param madeOn the day in words; core knows no clock
 * Rules: TAK-4.
 */
export const resultJson = (plan: Plan, result: PlanResult, madeOn: string): string =>
  `${JSON.stringify(
    {
      about:
        'Results of a plan: figures are estimates. Units stand in each name; places are pairs of mm, rings are lists of them. A number without a unit is a count, a share or a part of the camera.',
      planName: plan.name,
      invented: plan.invented,
      madeOn,
      ...result,
    },
    plain,
    1,
  )}\n`
