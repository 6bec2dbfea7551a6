import { createStore } from 'zustand/vanilla'
import { ok, type Result } from '../core/units'
import { clearBench } from './plans'

/** How the program itself is kept in this browser. */
interface ProgramState {
  /** From now on it opens without a network. */
  readonly isKept: boolean
  /** A newer version lies ready; it comes when the maker asks for it. */
  readonly hasNewer: boolean
}

export const programStore = createStore<ProgramState>(() => ({ isKept: false, hasNewer: false }))

/** A page that stays open for days looks for a newer version when the maker comes back to it. */
const LOOK_AGAIN_MS = 3_600_000

let waiting: ServiceWorker | null = null

function noteNewer(worker: ServiceWorker | null): void {
  // The very first version waits for nobody: there is no page of an older one.
  if (worker === null || navigator.serviceWorker.controller === null) return
  waiting = worker
  programStore.setState({ hasNewer: true })
}

function watchInstalling(worker: ServiceWorker | null): void {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed') noteNewer(worker)
  })
}

function lookAgain(registration: ServiceWorkerRegistration): void {
  let lookedAtMs = Date.now()
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' || Date.now() - lookedAtMs < LOOK_AGAIN_MS) return
    lookedAtMs = Date.now()
    // Without a network the next look will do.
    registration.update().catch(() => undefined)
  })
}

/**
 * Keeps the whole program in the browser, where that can be: not in development, and not over plain http, where browsers
 * do not allow it. Whatever goes wrong, the program works on as long as there is a network.
 */
export async function keepProgram(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  try {
    const registration = await navigator.serviceWorker.register(new URL('offline.js', document.baseURI))
    noteNewer(registration.waiting)
    watchInstalling(registration.installing)
    registration.addEventListener('updatefound', () => watchInstalling(registration.installing))
    lookAgain(registration)
    await navigator.serviceWorker.ready
    programStore.setState({ isKept: true })
  } catch {
    programStore.setState({ isKept: false })
  }
}

/** Saves the job and loads the page anew with the newer version. Other windows go on with the old one. */
export async function takeNewer(): Promise<Result<null>> {
  const cleared = await clearBench()
  if (!cleared.ok) return cleared
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
  waiting?.postMessage('take-over')
  return ok(null)
}

export const leaveNewerForLater = (): void => programStore.setState({ hasNewer: false })
