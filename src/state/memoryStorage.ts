import type { Plan } from '../core/plan'
import {
  FRESH_PHOTO_MS,
  type KeptOriginal,
  outcomeOfMeeting,
  photoHashesIn,
  type PlanListing,
  type PlanStorage,
  type PlanVersion,
  type SaveOutcome,
  type StoredPlan,
} from './planStorage'
import { versionsToDrop } from './thinVersions'

/** For a browser that keeps nothing: everything works until the window is closed, and the screen says so. */
export class MemoryStorage implements PlanStorage {
  readonly kind = 'memory'
  readonly #nowMs: () => number
  readonly #plans = new Map<string, StoredPlan>()
  readonly #photos = new Map<string, { readonly photo: Blob; readonly storedAtMs: number }>()
  readonly #originals: (KeptOriginal & { readonly bytes: Blob })[] = []
  #versions: readonly PlanVersion[] = []
  #leased: readonly string[] = []

  constructor(nowMs: () => number = () => Date.now()) {
    this.#nowMs = nowMs
  }

  async savePlan(plan: Plan, knownRevision: number | null): Promise<SaveOutcome> {
    const stored = this.#plans.get(plan.id)
    if (stored !== undefined && stored.revision !== knownRevision) {
      return outcomeOfMeeting(stored, plan)
    }
    const revision = (stored?.revision ?? knownRevision ?? 0) + 1
    const savedAtMs = this.#nowMs()
    const { id, name, invented } = plan
    this.#plans.set(id, { id, revision, savedAtMs, name, invented, plan })
    this.#keepVersion({ planId: id, savedAtMs, plan })
    return { kind: 'saved', revision, savedAtMs }
  }

  #keepVersion(version: PlanVersion): void {
    const others = this.#versions.filter(({ planId }) => planId !== version.planId)
    const own = [...this.#versions.filter(({ planId }) => planId === version.planId), version]
    const times = own.map(({ savedAtMs }) => savedAtMs)
    const gone = new Set(versionsToDrop(times, version.savedAtMs))
    this.#versions = [...others, ...own.filter(({ savedAtMs }) => !gone.has(savedAtMs))]
  }

  async listVersions(planId: string): Promise<readonly PlanVersion[]> {
    return this.#versions.filter((version) => version.planId === planId).toReversed()
  }

  async readPlan(id: string): Promise<StoredPlan | null> {
    return this.#plans.get(id) ?? null
  }

  async listPlans(): Promise<readonly PlanListing[]> {
    return [...this.#plans.values()].toSorted((a, b) => b.savedAtMs - a.savedAtMs)
  }

  async deletePlan(id: string): Promise<void> {
    this.#plans.delete(id)
    this.#versions = this.#versions.filter(({ planId }) => planId !== id)
  }

  async keepPhoto(hash: string, photo: Blob): Promise<null> {
    this.#photos.set(hash, { photo, storedAtMs: this.#nowMs() })
    return null
  }

  async readPhoto(hash: string): Promise<Blob | null> {
    return this.#photos.get(hash)?.photo ?? null
  }

  async leasePhotos(_tabId: string, hashes: readonly string[]): Promise<void> {
    this.#leased = hashes
  }

  async endLease(): Promise<void> {
    this.#leased = []
  }

  async dropUnusedPhotos(): Promise<number> {
    const inUse = new Set([
      ...this.#leased,
      ...[...this.#plans.values(), ...this.#versions].flatMap(({ plan }) => photoHashesIn(plan)),
    ])
    const now = this.#nowMs()
    const unused = [...this.#photos].filter(
      ([hash, { storedAtMs }]) => !inUse.has(hash) && now - storedAtMs >= FRESH_PHOTO_MS,
    )
    for (const [hash] of unused) this.#photos.delete(hash)
    return unused.length
  }

  async keepOriginal(name: string, original: Blob): Promise<null> {
    this.#originals.push({ key: this.#originals.length + 1, name, keptAtMs: this.#nowMs(), bytes: original })
    return null
  }

  async listOriginals(): Promise<readonly KeptOriginal[]> {
    return this.#originals.map(({ key, name, keptAtMs }) => ({ key, name, keptAtMs }))
  }

  async readOriginal(key: number): Promise<Blob | null> {
    return this.#originals.find((original) => original.key === key)?.bytes ?? null
  }
}
