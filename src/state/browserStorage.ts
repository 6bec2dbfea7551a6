import type { Plan } from '../core/plan'
import type { InputProblem } from '../core/units'
import { blobOf, type Database, openDatabase, recordOf, versionsOf } from './database'
import {
  FRESH_PHOTO_MS,
  type KeptOriginal,
  LEASE_MS,
  outcomeOfMeeting,
  photoHashesIn,
  type PlanListing,
  type PlanStorage,
  type PlanVersion,
  type SaveOutcome,
  type StoredPlan,
} from './planStorage'
import { storageProblem } from './storageProblem'
import { versionsToDrop } from './thinVersions'

/** Plans and photos in the browser's own database. */
export class BrowserStorage implements PlanStorage {
  readonly kind = 'browser'
  readonly #nowMs: () => number
  #database: Promise<Database> | null = null

  private constructor(nowMs: () => number) {
    this.#nowMs = nowMs
  }

  /** @throws what the browser throws when it keeps nothing for us */
  static async open(nowMs: () => number = () => Date.now()): Promise<BrowserStorage> {
    const storage = new BrowserStorage(nowMs)
    await storage.#open()
    return storage
  }

  /** A connection that the browser has closed is opened again by the next use. */
  #open(): Promise<Database> {
    this.#database ??= openDatabase(() => {
      this.#database = null
    })
    return this.#database
  }

  async savePlan(plan: Plan, knownRevision: number | null): Promise<SaveOutcome> {
    const first = await this.#trySave(plan, knownRevision)
    if (first.kind !== 'failed' || first.problem.code !== 'storage-full') return first
    return (await this.#makeRoom()) ? this.#trySave(plan, knownRevision) : first
  }

  /** Earlier versions go first, then the photos that nothing shows any more. @returns whether anything went */
  async #makeRoom(): Promise<boolean> {
    try {
      const database = await this.#open()
      const versions = await database.count('versions')
      if (versions > 0) await database.clear('versions')
      return (await this.dropUnusedPhotos()) > 0 || versions > 0
    } catch {
      return false
    }
  }

  /** Reading the stored revision and writing the next one are one transaction: no other tab can come between. */
  async #trySave(plan: Plan, knownRevision: number | null): Promise<SaveOutcome> {
    try {
      const transaction = (await this.#open()).transaction(['plans', 'versions'], 'readwrite')
      const plans = transaction.objectStore('plans')
      const stored = await plans.get(plan.id)
      if (stored !== undefined && stored.revision !== knownRevision) {
        await transaction.done
        return outcomeOfMeeting(stored, plan)
      }
      const revision = (stored?.revision ?? knownRevision ?? 0) + 1
      const savedAtMs = this.#nowMs()
      const { id, name, invented } = plan
      const photoHashes = photoHashesIn(plan)
      const versions = transaction.objectStore('versions')
      const write = async (): Promise<void> => {
        await plans.put({ id, revision, savedAtMs, name, invented, plan, photoHashes })
        const times = (await versions.getAllKeys(versionsOf(id))).map(([, timeMs]) => timeMs)
        await versions.put({ planId: id, savedAtMs, plan, photoHashes })
        const gone = versionsToDrop([...times, savedAtMs], savedAtMs)
        for (const timeMs of gone) await versions.delete([id, timeMs])
      }
      await Promise.all([write(), transaction.done])
      return { kind: 'saved', revision, savedAtMs }
    } catch (error) {
      return { kind: 'failed', problem: storageProblem(error) }
    }
  }

  async readPlan(id: string): Promise<StoredPlan | null> {
    return (await (await this.#open()).get('plans', id)) ?? null
  }

  async listPlans(): Promise<readonly PlanListing[]> {
    const records = await (await this.#open()).getAll('plans')
    return records
      .map(({ id, name, savedAtMs, invented }) => ({ id, name, savedAtMs, invented }))
      .toSorted((a, b) => b.savedAtMs - a.savedAtMs)
  }

  async deletePlan(id: string): Promise<void> {
    const transaction = (await this.#open()).transaction(['plans', 'versions'], 'readwrite')
    await Promise.all([
      transaction.objectStore('plans').delete(id),
      transaction.objectStore('versions').delete(versionsOf(id)),
      transaction.done,
    ])
  }

  async listVersions(planId: string): Promise<readonly PlanVersion[]> {
    return (await (await this.#open()).getAll('versions', versionsOf(planId))).toReversed()
  }

  async keepPhoto(hash: string, photo: Blob): Promise<InputProblem | null> {
    const put = async (): Promise<InputProblem | null> => {
      try {
        const record = { hash, storedAtMs: this.#nowMs(), ...(await recordOf(photo)) }
        const transaction = (await this.#open()).transaction('photos', 'readwrite')
        await Promise.all([transaction.store.put(record), transaction.done])
        return null
      } catch (error) {
        return storageProblem(error)
      }
    }
    const first = await put()
    if (first?.code !== 'storage-full' || !(await this.#makeRoom())) return first
    return put()
  }

  async readPhoto(hash: string): Promise<Blob | null> {
    const record = await (await this.#open()).get('photos', hash)
    return record === undefined ? null : blobOf(record)
  }

  async leasePhotos(tabId: string, hashes: readonly string[]): Promise<void> {
    await (await this.#open()).put('leases', { tabId, hashes, atMs: this.#nowMs() })
  }

  async endLease(tabId: string): Promise<void> {
    await (await this.#open()).delete('leases', tabId)
  }

  async dropUnusedPhotos(): Promise<number> {
    const now = this.#nowMs()
    const stores = ['plans', 'versions', 'photos', 'leases'] as const
    const transaction = (await this.#open()).transaction(stores, 'readwrite')
    const inUse = new Set<string>()
    for await (const { value } of transaction.objectStore('plans')) {
      for (const hash of value.photoHashes) inUse.add(hash)
    }
    const shown = transaction.objectStore('versions').index('photos')
    for (let at = await shown.openKeyCursor(null, 'nextunique'); at !== null; at = await at.continue()) {
      inUse.add(at.key)
    }
    for await (const cursor of transaction.objectStore('leases')) {
      if (now - cursor.value.atMs > LEASE_MS) await cursor.delete()
      else for (const hash of cursor.value.hashes) inUse.add(hash)
    }
    let dropped = 0
    for await (const cursor of transaction.objectStore('photos')) {
      if (inUse.has(cursor.key) || now - cursor.value.storedAtMs < FRESH_PHOTO_MS) continue
      await cursor.delete()
      dropped++
    }
    await transaction.done
    return dropped
  }

  async keepOriginal(name: string, original: Blob): Promise<InputProblem | null> {
    try {
      const record = { name, keptAtMs: this.#nowMs(), ...(await recordOf(original)) }
      const transaction = (await this.#open()).transaction('originals', 'readwrite')
      await Promise.all([transaction.store.put(record), transaction.done])
      return null
    } catch (error) {
      return storageProblem(error)
    }
  }

  async listOriginals(): Promise<readonly KeptOriginal[]> {
    const records = await (await this.#open()).getAll('originals')
    return records.map(({ key, name, keptAtMs }) => ({ key: key ?? 0, name, keptAtMs }))
  }

  async readOriginal(key: number): Promise<Blob | null> {
    const record = await (await this.#open()).get('originals', key)
    return record === undefined ? null : blobOf(record)
  }
}
