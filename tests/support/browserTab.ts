import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { readFile } from 'node:fs/promises'
import { vi } from 'vitest'
import { inspectImageFile } from '../../src/core/photo'
import type { PhotoSize } from '../../src/workers'

/** Node has no localStorage: this is as much of one as the program uses. */
class TestStorage {
  readonly #items = new Map<string, string>()
  get length(): number {
    return this.#items.size
  }
  key(n: number): string | null {
    return [...this.#items.keys()][n] ?? null
  }
  getItem(key: string): string | null {
    return this.#items.get(key) ?? null
  }
  setItem(key: string, text: string): void {
    this.#items.set(key, text)
  }
  removeItem(key: string): void {
    this.#items.delete(key)
  }
}

/** A browser that has kept nothing for us yet. */
export function freshBrowser(): void {
  vi.stubGlobal('localStorage', new TestStorage())
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
class HeaderReader {
  async open(_hash: string, bytes: Blob): Promise<PhotoSize> {
    const facts = inspectImageFile(new Uint8Array(await bytes.arrayBuffer()))
    if (!facts.ok) throw new Error(facts.problem.code)
    return { widthPx: facts.value.widthPx, heightPx: facts.value.heightPx }
  }

  close(): Promise<void> {
    return Promise.resolve()
  }

  isOpen(): boolean {
    return false
  }
}

/** Node's own fetch knows no files. */
export function serveFiles(): void {
  vi.stubGlobal('fetch', async (url: URL) => new Response(await readFile(url)))
}

/** All modules of the state anew. */
async function freshModules() {
  vi.resetModules()
  vi.doMock('../../src/workers', async (load) => ({ ...(await load<object>()), PhotoClient: HeaderReader }))
  const [plan, session, running, files, saving, bench, desk, ids, notes, versions] = await Promise.all([
    import('../../src/state/planStore'),
    import('../../src/state/sessionStore'),
    import('../../src/state/run'),
    import('../../src/state/planFiles'),
    import('../../src/state/autosave'),
    import('../../src/state/bench'),
    import('../../src/state/storageDesk'),
    import('../../src/state/tabLink'),
    import('../../src/state/unsavedNotes'),
    import('../../src/state/versions'),
  ])
  return {
    ...plan,
    ...session,
    ...running,
    ...files,
    ...saving,
    ...bench,
    ...desk,
    ...ids,
    ...notes,
    ...versions,
  }
}

export type BrowserTab = Awaited<ReturnType<typeof freshModules>>

/** A tab of the browser, beside those that are open already. */
export const openTab = (): Promise<BrowserTab> => freshModules()

/** Messages between tabs and steps of the database come in turns of the event loop. */
export async function until(isSo: () => boolean, what: string): Promise<void> {
  for (let turn = 0; turn < 400; turn++) {
    if (isSo()) return
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
  throw new Error(`waited in vain until ${what}`)
}
