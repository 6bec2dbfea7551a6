import { blankPlan, type LostPart, type Plan } from '../core/plan'
import { ok, problem, type Result } from '../core/units'
import { asCopy } from './asCopy'
import { flush, keepMineAsCopy } from './autosave'
import { benchRecord, NOTHING_TO_STORE, putOnBench } from './bench'
import { newId } from './newId'
import type { KeptOriginal, PlanListing, PlanStorage, StoredPlan } from './planStorage'
import { planStore } from './planStore'
import { sameData } from './sameData'
import { planStorage } from './storageDesk'
import { storageProblem } from './storageProblem'

export interface OpenedPlan {
  readonly plan: Plan
  readonly lost: readonly LostPart[]
  /** Another plan under the same id that was here before; the newcomer now lies on the bench under an id of its own. */
  readonly twin?: StoredTwin
}

export interface StoredTwin {
  readonly id: string
  readonly savedAtMs: number
}

/**
 * Makes room on the bench: whatever lies there is saved first, and stays if that cannot be done.
 * @returns the storage's problem, unless the plan has been saved to a file as it is
 */
export async function clearBench(): Promise<Result<null>> {
  await flush()
  if (
    planStore.getState().save.kind === 'conflict' &&
    planStore.getState().plan !== benchRecord().savedPlan
  ) {
    await keepMineAsCopy()
  }
  const { plan, save } = planStore.getState()
  const isSafe = save.kind !== 'failed' || plan === benchRecord().filedPlan
  return isSafe ? ok(null) : { ok: false, problem: save.problem }
}

/** All stored plans, newest first. */
export async function listPlans(): Promise<readonly PlanListing[]> {
  return (await planStorage()).listPlans()
}

const originalOf = (stored: StoredPlan): Blob =>
  new Blob([JSON.stringify(stored.plan, null, 1)], { type: 'application/json' })

/** Keeps the original of a plan that could not be read whole before anything is saved over it. */
async function putMendedOnBench(storage: PlanStorage, stored: StoredPlan, opened: OpenedPlan): Promise<void> {
  const refusal = await storage.keepOriginal(stored.name, originalOf(stored))
  if (refusal === null) putOnBench(opened.plan, stored, opened.lost)
  // No room for the original: it stays where it is, and the mended plan becomes one of its own.
  else putOnBench(asCopy(opened.plan), null, opened.lost)
}

async function openStored(storage: PlanStorage, id: string): Promise<Result<OpenedPlan>> {
  const stored = await storage.readPlan(id)
  if (stored === null) return problem('plan-not-stored')
  const { parsePlan } = await import('./planReader')
  const parsed = parsePlan(stored.plan)
  if (!parsed.ok) return parsed
  if (parsed.value.lost.length > 0) await putMendedOnBench(storage, stored, parsed.value)
  // Read back unchanged, it is the same plan: nothing to save.
  else putOnBench(parsed.value.plan, stored)
  return parsed
}

async function openFromStorage(id: string): Promise<Result<OpenedPlan>> {
  try {
    return await openStored(await planStorage(), id)
  } catch (error) {
    return { ok: false, problem: storageProblem(error) }
  }
}

/** Puts a stored plan on the bench. One that cannot be read stays stored as it is; `storedPlanFile` hands it out. */
export async function openPlan(id: string): Promise<Result<OpenedPlan>> {
  const cleared = await clearBench()
  if (!cleared.ok) return cleared
  return openFromStorage(id)
}

/** After a conflict: what the other tab saved comes on the bench; what was here and unsaved goes. */
export async function loadTheirs(): Promise<Result<OpenedPlan>> {
  return openFromStorage(planStore.getState().plan.id)
}

/**
 * Puts a plan that came from outside (a file, a demo) on the bench. If this browser holds the same plan, that one is
 * opened; if it holds another one under the same id, the newcomer becomes a plan of its own: neither is lost.
 */
export async function adoptPlan(plan: Plan, lost: readonly LostPart[] = []): Promise<Result<OpenedPlan>> {
  const cleared = await clearBench()
  if (!cleared.ok) return cleared
  const stored = await (await planStorage()).readPlan(plan.id)
  if (stored === null) putOnBench(plan, null, lost)
  else if (sameData(stored.plan, plan)) putOnBench(plan, stored, lost)
  else putOnBench({ ...plan, id: newId() }, null, lost)
  const onBench = planStore.getState().plan
  const twin =
    stored !== null && onBench.id !== stored.id ? { id: stored.id, savedAtMs: stored.savedAtMs } : null
  return ok({ plan: onBench, lost, ...(twin === null ? {} : { twin }) })
}

/** An empty plan of the maker's own. */
export async function newPlan(): Promise<Result<OpenedPlan>> {
  const cleared = await clearBench()
  if (!cleared.ok) return cleared
  const plan = blankPlan(newId(), newId())
  putOnBench(plan, NOTHING_TO_STORE)
  return ok({ plan, lost: [] })
}

/** A copy of a stored plan comes on the bench. */
export async function duplicatePlan(id: string): Promise<Result<OpenedPlan>> {
  const opened = await openPlan(id)
  if (!opened.ok) return opened
  const copy = asCopy(opened.value.plan)
  putOnBench(copy, null, opened.value.lost)
  return ok({ plan: copy, lost: opened.value.lost })
}

/** Photos that nothing else shows go with it. If it lies on the bench, a blank plan takes its place. */
export async function deletePlan(id: string): Promise<void> {
  if (planStore.getState().plan.id === id) {
    await flush()
    putOnBench(blankPlan(newId(), newId()), NOTHING_TO_STORE)
  }
  const storage = await planStorage()
  await storage.deletePlan(id)
  await storage.dropUnusedPhotos()
}

/** What a stored plan holds, read or not, as a file to download. */
export async function storedPlanFile(id: string): Promise<Blob | null> {
  const stored = await (await planStorage()).readPlan(id)
  return stored === null ? null : originalOf(stored)
}

/** Originals of what could not be read whole. */
export async function listKept(): Promise<readonly KeptOriginal[]> {
  return (await planStorage()).listOriginals()
}

export async function keptFile(key: number): Promise<Blob | null> {
  return (await planStorage()).readOriginal(key)
}
