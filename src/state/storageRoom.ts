import { planStore } from './planStore'

export interface StorageRoom {
  readonly usedBytes: number
  readonly mostBytes: number
  /** The browser clears nothing by itself, however short of room the device is. */
  readonly isPersistent: boolean
}

const storageManager = (): StorageManager | undefined => globalThis.navigator?.storage

/** What this browser says of its room; null where it says nothing. */
export async function storageRoom(): Promise<StorageRoom | null> {
  const manager = storageManager()
  if (manager?.estimate === undefined) return null
  const { usage, quota } = await manager.estimate()
  if (usage === undefined || quota === undefined) return null
  return { usedBytes: usage, mostBytes: quota, isPersistent: (await manager.persisted?.()) ?? false }
}

/**
 * Asks the browser, once for each page, not to clear our jobs by itself: as soon as a job of the maker's own is saved,
 * so that a browser that puts the question to the maker does so when there is something to keep.
 * @returns a function that stops waiting for that
 */
export function askToBeKept(): () => void {
  const manager = storageManager()
  if (manager?.persist === undefined) return () => undefined
  const stop = planStore.subscribe(({ plan, save }) => {
    if (save.kind !== 'saved' || plan.invented || plan.slabs.length === 0) return
    stop()
    // A refusal changes nothing: the room line in the list of jobs says how things stand.
    manager.persist().catch(() => undefined)
  })
  return stop
}
