import { BrowserStorage } from './browserStorage'
import { MemoryStorage } from './memoryStorage'
import type { PlanStorage } from './planStorage'
import { setNotice } from './sessionStore'

let storage: Promise<PlanStorage> | null = null

async function openStorage(): Promise<PlanStorage> {
  try {
    return await BrowserStorage.open()
  } catch {
    setNotice({ code: 'storage-unavailable', values: {} })
    return new MemoryStorage()
  }
}

/** The browser's storage, or where it keeps nothing for us the memory; the maker is then told. */
export function planStorage(): Promise<PlanStorage> {
  storage ??= openStorage()
  return storage
}
