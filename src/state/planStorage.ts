import type { Plan } from '../core/plan'
import type { InputProblem } from '../core/units'
import { sameData } from './sameData'

/** A plan as it lies in the browser: not yet checked, it may be of an older or newer version. */
export interface StoredPlan {
  readonly id: string
  /** Raised by every save: tells whether somebody else has saved in the meantime. */
  readonly revision: number
  readonly savedAtMs: number
  readonly name: string
  readonly invented: boolean
  readonly plan: unknown
}

export type PlanListing = Pick<StoredPlan, 'id' | 'name' | 'savedAtMs' | 'invented'>

/** A plan as it was at an earlier save. */
export interface PlanVersion {
  readonly planId: string
  readonly savedAtMs: number
  /** Not checked, like a stored plan. */
  readonly plan: unknown
}

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly revision: number; readonly savedAtMs: number }
  /** Nothing was written: the stored plan is not the one that this save builds on. */
  | { readonly kind: 'conflict'; readonly theirSavedAtMs: number }
  | { readonly kind: 'failed'; readonly problem: InputProblem }

/** The original of something that could not be read whole. */
export interface KeptOriginal {
  readonly key: number
  readonly name: string
  readonly keptAtMs: number
}

/** Where plans and photos are kept. Everything is whole or not at all: a plan is written in one transaction. */
export interface PlanStorage {
  readonly kind: 'browser' | 'memory'
  /** @param knownRevision that of the stored plan which this one grew from; null for a plan that is not stored yet */
  savePlan(plan: Plan, knownRevision: number | null): Promise<SaveOutcome>
  readPlan(id: string): Promise<StoredPlan | null>
  /** Newest first. */
  listPlans(): Promise<readonly PlanListing[]>
  /** Its versions go with it. */
  deletePlan(id: string): Promise<void>
  /** Every save keeps one; many of the last minutes stay, few of long ago. Newest first. */
  listVersions(planId: string): Promise<readonly PlanVersion[]>
  /** @returns null when it is kept, else the problem */
  keepPhoto(hash: string, photo: Blob): Promise<InputProblem | null>
  readPhoto(hash: string): Promise<Blob | null>
  /** Says which photos this tab still needs (its plan and its undo steps). */
  leasePhotos(tabId: string, hashes: readonly string[]): Promise<void>
  endLease(tabId: string): Promise<void>
  /** Drops the photos that no plan, no tab and no recent import refers to. @returns how many */
  dropUnusedPhotos(): Promise<number>
  keepOriginal(name: string, original: Blob): Promise<InputProblem | null>
  listOriginals(): Promise<readonly KeptOriginal[]>
  readOriginal(key: number): Promise<Blob | null>
}

/** A tab renews its lease far more often; one that was closed without a word loses it after this. */
export const LEASE_MS = 7 * 24 * 3_600_000

/** A photo is kept before the plan that shows it is saved. */
export const FRESH_PHOTO_MS = 3_600_000

/**
 * Every photo that a plan names, found in its text: works for plans of newer versions and for broken ones too, and
 * errs on the side of keeping.
 */
export const photoHashesIn = (plan: unknown): readonly string[] => [
  ...new Set(JSON.stringify(plan)?.match(/\b[0-9a-f]{64}\b/g) ?? []),
]

/** Somebody has saved this plan in the meantime: a conflict, unless it is the very same. */
export const outcomeOfMeeting = (stored: StoredPlan, plan: Plan): SaveOutcome =>
  sameData(stored.plan, plan)
    ? { kind: 'saved', revision: stored.revision, savedAtMs: stored.savedAtMs }
    : { kind: 'conflict', theirSavedAtMs: stored.savedAtMs }
