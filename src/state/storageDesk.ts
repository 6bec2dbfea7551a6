import { createStore } from 'zustand/vanilla'
import { BrowserStorage } from './browserStorage'
import { MemoryStorage } from './memoryStorage'
import type { PlanStorage } from './planStorage'
import { setNotice } from './sessionStore'

/** True where the browser keeps nothing for us: what is saved goes when the window is closed. */
export const storageStore = createStore<{ readonly isFleeting: boolean }>(() => ({ isFleeting: false }))

let storage: Promise<PlanStorage> | null = null

async function openStorage(): Promise<PlanStorage> {
  try {
    return await BrowserStorage.open()
  } catch {
    setNotice({ code: 'storage-unavailable', values: {} })
    storageStore.setState({ isFleeting: true })
    return new MemoryStorage()
  }
}

/** The browser's storage, or where it keeps nothing for us the memory; the maker is then told. */
export function planStorage(): Promise<PlanStorage> {
  storage ??= openStorage()
  return storage
}
