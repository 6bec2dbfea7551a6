import { ok, problem, type Result } from '../units'
import { migrate } from './migrations'
import { repairReferences } from './recovery/repairReferences'
import { repairSchema, type LostPart } from './recovery/repairSchema'
import { type Plan, planSchema } from './schema'

export type { LostPart } from './recovery/repairSchema'

export interface ParsedPlan {
  readonly plan: Plan
  /** What could not be kept, each as a sentence's key and values; empty when the plan was whole. */
  readonly lost: readonly LostPart[]
}

/** A mended place may bring others to light below it; no path of the schema is deeper than this. */
const ROUNDS = 12

/**
 * The plan that some JSON holds, of whatever published version. What does not fit is dropped in the smallest part that
 * can be (a mark, a distance, a trace, at worst a slab or an option) and listed by name; never the whole plan for it.
 * @param json as JSON.parse or the browser's storage gave it
 * @returns the plan and what was lost; problems 'plan-not-a-plan' {}, 'plan-newer-version' {version, readable},
 *          'plan-beyond-repair' {at}
 */
export function parsePlan(json: unknown): Result<ParsedPlan> {
  const migrated = migrate(json)
  if (!migrated.ok) return migrated
  let candidate: unknown = migrated.value
  let lost: readonly LostPart[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const read = planSchema.safeParse(candidate)
    if (read.success) {
      const whole = repairReferences(read.data)
      return ok({ plan: whole.plan, lost: [...lost, ...whole.lost] })
    }
    const repaired = repairSchema(candidate, read.error.issues)
    candidate = repaired.json
    lost = [...lost, ...repaired.lost]
  }
  const [first] = planSchema.safeParse(candidate).error?.issues ?? []
  return problem('plan-beyond-repair', { at: first?.path.map(String).join(' / ') ?? '' })
}
