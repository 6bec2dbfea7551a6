import { readFileSync } from 'node:fs'
import { parsePlan, type Plan } from '../../src/core/plan'

/** Nothing can change it in place without being caught. */
function deeplyFrozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(deeplyFrozen)
    Object.freeze(value)
  }
  return value
}

/** The plan that is frozen for the current version's migrations: it holds at least one of every kind of thing. */
export function frozenPlan(): Plan {
  const text = readFileSync(new URL('../migrations/v1.plan.json', import.meta.url), 'utf8')
  const read = parsePlan(JSON.parse(text))
  if (!read.ok) throw new Error(read.problem.code)
  return deeplyFrozen(read.value.plan)
}
