import type { Plan } from '../core/plan'
import { flush } from './autosave'
import { goBackTo } from './commands'
import { planStore } from './planStore'
import { run } from './run'
import { sameData } from './sameData'
import { lookAtPlan } from './sessionStore'
import { planStorage } from './storageDesk'

export interface ListedVersion {
  readonly savedAtMs: number
  readonly plan: Plan
  /** It says the same as the plan on the bench. */
  readonly isNow: boolean
}

/** Earlier versions of the plan on the bench, newest first. What cannot be read any more is left out. */
export async function listVersions(): Promise<readonly ListedVersion[]> {
  await flush()
  const { plan } = planStore.getState()
  const versions = await (await planStorage()).listVersions(plan.id)
  const { parsePlan } = await import('./planReader')
  return versions.flatMap((version) => {
    const parsed = parsePlan(version.plan)
    if (!parsed.ok) return []
    return [
      {
        savedAtMs: version.savedAtMs,
        plan: parsed.value.plan,
        isNow: sameData(parsed.value.plan, plan),
      },
    ]
  })
}

/** The plan as it was then, as a step that can be undone. Its photos are still here: versions keep them. */
export function goBackToVersion({ plan }: ListedVersion): void {
  run(goBackTo, { version: plan })
  lookAtPlan(planStore.getState().plan)
}
