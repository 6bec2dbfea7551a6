import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { readFile } from 'node:fs/promises'
import { vi } from 'vitest'
import { inspectImageFile } from '../../src/core/photo'
import type { PhotoWorker } from '../../src/state/photoDesk'

/** A browser that has kept nothing for us yet. */
export function freshBrowser(): void {
  globalThis.indexedDB = new IDBFactory()
}

/** A browser that keeps nothing for us: a private window, or storage switched off. */
export function closedBrowser(): void {
  const closed = new IDBFactory()
  closed.open = () => {
    throw new DOMException('storage is switched off', 'SecurityError')
  }
  globalThis.indexedDB = closed
}

/** Node has no image decoder: this one believes what the file's header says. Real decoding is tested in Chromium. */
export const headerReader: PhotoWorker = {
  open: async (_hash, bytes) => {
    const facts = inspectImageFile(new Uint8Array(await bytes.arrayBuffer()))
    if (!facts.ok) throw new Error(facts.problem.code)
    return { widthPx: facts.value.widthPx, heightPx: facts.value.heightPx }
  },
  reduce: () => Promise.reject(new Error('no decoder here')),
  close: () => Promise.resolve(),
  isOpen: () => false,
}

/** Node's own fetch knows no files. */
export function serveFiles(): void {
  vi.stubGlobal('fetch', async (url: URL) => new Response(await readFile(url)))
}

async function freshModules() {
  vi.resetModules()
  const [plan, session, running, files, bench, desk, photos, ids] = await Promise.all([
    import('../../src/state/planStore'),
    import('../../src/state/sessionStore'),
    import('../../src/state/run'),
    import('../../src/state/planFiles'),
    import('../../src/state/bench'),
    import('../../src/state/storageDesk'),
    import('../../src/state/photoDesk'),
    import('../../src/state/tabLink'),
  ])
  return { ...plan, ...session, ...running, ...files, ...bench, ...desk, ...photos, ...ids }
}

export type BrowserTab = Awaited<ReturnType<typeof freshModules>>

/** A tab of the browser: all modules of the state anew, beside those of the tabs that are open already. */
export async function openTab(): Promise<BrowserTab> {
  const tab = await freshModules()
  tab.setPhotoWorker(headerReader)
  return tab
}

/** Messages between tabs and steps of the database come in turns of the event loop. */
export async function until(isSo: () => boolean, what: string): Promise<void> {
  for (let turn = 0; turn < 400; turn++) {
    if (isSo()) return
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
  throw new Error(`waited in vain until ${what}`)
}
