import { renamePlan } from './commands'
import { flush } from './autosave'
import { deletePlan, openPlan, type StoredTwin } from './plans'
import { planStore } from './planStore'
import { run } from './run'

/** Of a plan from a file and another under its id that was here: keeps the file's, which lies on the bench. */
export async function keepNewcomer(twin: StoredTwin): Promise<void> {
  await flush()
  await deletePlan(twin.id)
}

/** Keeps the one that was here; the newcomer on the bench goes. */
export async function keepStoredPlan(twin: StoredTwin): Promise<void> {
  const { id } = planStore.getState().plan
  const opened = await openPlan(twin.id)
  // What was here does not open: then the newcomer is all there is.
  if (opened.ok) await deletePlan(id)
}

/**
 * Keeps both, each with its date in its name; the newcomer stays on the bench.
 * @param names with which the two are to be told apart
 */
export async function keepBothPlans(
  twin: StoredTwin,
  names: { readonly newcomer: string; readonly stored: string },
): Promise<void> {
  const { id } = planStore.getState().plan
  run(renamePlan, { name: names.newcomer })
  await flush()
  const stored = await openPlan(twin.id)
  if (!stored.ok) return
  run(renamePlan, { name: names.stored })
  await flush()
  await openPlan(id)
}
