import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type BrowserTab, closedBrowser, freshBrowser, openTab, until } from '../../tests/support/browserTab'
import { frozenPlan } from '../../tests/support/frozenPlan'
import { removeSlab, renamePlan } from './commands'

const PLAN = frozenPlan()
const stops: (() => void)[] = []

/** A tab with the plan on its bench, saved once. */
async function tabAtWork(): Promise<BrowserTab> {
  const tab = await openTab()
  stops.push(tab.startAutosave())
  return tab
}

const kindOf = (tab: BrowserTab): string => tab.planStore.getState().save.kind

const nameIn = async (tab: BrowserTab, id = PLAN.id): Promise<string | undefined> =>
  (await (await tab.planStorage()).readPlan(id))?.name

/** A method as it is, to be called on whatever it belongs to. */
const methodOf = <T, K extends keyof T>(prototype: T, name: K): T[K] => prototype[name]

/** Makes one method of an object store fail with a DOMException until the returned function is called. */
function failing(method: 'put' | 'add', errorName: string, storeName: string): () => void {
  const prototype = IDBObjectStore.prototype
  const real = prototype[method]
  const spy = vi.spyOn(prototype, method).mockImplementation(function (this: IDBObjectStore, ...args) {
    if (this.name === storeName) throw new DOMException('made for a test', errorName)
    return real.apply(this, args)
  })
  return () => spy.mockRestore()
}

beforeEach(freshBrowser)

afterEach(() => {
  for (const stop of stops.splice(0)) stop()
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

describe('autosave', () => {
  it('stores a change within a second, by itself', async () => {
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    await tab.flush()
    tab.run(renamePlan, { name: 'Desk' })
    const changedAt = performance.now()
    expect(kindOf(tab)).toBe('unsaved')
    await until(() => kindOf(tab) === 'saved', 'it is saved')
    expect(performance.now() - changedAt).toBeLessThan(1_000)
    expect(await nameIn(tab)).toBe('Desk')
  })

  it('restores what was on the bench after a reload', async () => {
    const before = await tabAtWork()
    before.putOnBench(PLAN, null)
    before.run(renamePlan, { name: 'Desk' })
    await before.flush()
    const after = await openTab()
    const opened = await after.openPlan(PLAN.id)
    expect(opened.ok && opened.value.lost).toEqual([])
    expect(after.planStore.getState().plan).toEqual({ ...PLAN, name: 'Desk' })
    expect(kindOf(after)).toBe('saved')
  })

  it('does not store the blank plan that a page begins with', async () => {
    const tab = await tabAtWork()
    await tab.flush()
    expect(await tab.listPlans()).toEqual([])
    tab.run(renamePlan, { name: 'Mine' })
    await tab.flush()
    expect((await tab.listPlans()).map(({ name }) => name)).toEqual(['Mine'])
  })

  it('saves again what changed while it was saving', async () => {
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    const first = tab.flush()
    tab.run(renamePlan, { name: 'Later' })
    await first
    await until(() => kindOf(tab) === 'saved', 'it is saved')
    expect(await nameIn(tab)).toBe('Later')
  })

  it('says that storage is full, keeps the plan, and saves once there is room', async () => {
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    await tab.flush()
    const free = failing('put', 'QuotaExceededError', 'plans')
    tab.run(renamePlan, { name: 'Too much' })
    await tab.flush()
    expect(tab.planStore.getState().save).toEqual({
      kind: 'failed',
      problem: { code: 'storage-full', values: {} },
    })
    expect(tab.planStore.getState().plan.name).toBe('Too much')
    expect(await nameIn(tab)).toBe(PLAN.name)
    free()
    await tab.flush()
    expect(kindOf(tab)).toBe('saved')
    expect(await nameIn(tab)).toBe('Too much')
  })

  it('refuses to take another plan on the bench while this one cannot be saved, unless it is in a file', async () => {
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    failing('put', 'QuotaExceededError', 'plans')
    tab.run(renamePlan, { name: 'Too much' })
    expect(await tab.newPlan()).toEqual({ ok: false, problem: { code: 'storage-full', values: {} } })
    expect(tab.planStore.getState().plan.name).toBe('Too much')
    await tab.savePlanFile(tab.planStore.getState().plan)
    expect((await tab.newPlan()).ok).toBe(true)
  })

  it('keeps the stored plan whole when the browser is killed in mid-save', async () => {
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    await tab.flush()
    // A killed browser never commits: the transaction ends without its changes.
    const real = methodOf(IDBObjectStore.prototype, 'put')
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      const request = real.apply(this, args)
      if (this.name === 'plans') this.transaction.abort()
      return request
    })
    tab.run(renamePlan, { name: 'Half written' })
    await tab.flush()
    expect(kindOf(tab)).toBe('failed')
    vi.restoreAllMocks()
    const after = await openTab()
    expect(await after.openPlan(PLAN.id)).toEqual({ ok: true, value: { plan: PLAN, lost: [] } })
  })

  it('works in memory where the browser keeps nothing, and says so', async () => {
    closedBrowser()
    const tab = await tabAtWork()
    tab.putOnBench(PLAN, null)
    await tab.flush()
    expect((await tab.planStorage()).kind).toBe('memory')
    expect(tab.sessionStore.getState().notice).toEqual({ code: 'storage-unavailable', values: {} })
    tab.run(renamePlan, { name: 'Desk' })
    await tab.flush()
    expect((await tab.newPlan()).ok).toBe(true)
    expect((await tab.openPlan(PLAN.id)).ok).toBe(true)
    expect(tab.planStore.getState().plan.name).toBe('Desk')
  })
})

describe('two tabs', () => {
  async function twoTabs(): Promise<readonly [BrowserTab, BrowserTab]> {
    const first = await tabAtWork()
    first.putOnBench(PLAN, null)
    await first.flush()
    const second = await tabAtWork()
    expect((await second.openPlan(PLAN.id)).ok).toBe(true)
    return [first, second]
  }

  it('tell the later one that the plan is open already', async () => {
    const [first, second] = await twoTabs()
    await until(() => second.sessionStore.getState().notice !== null, 'the second tab is told')
    expect(second.sessionStore.getState().notice?.code).toBe('plan-open-elsewhere')
    expect(first.sessionStore.getState().notice).toBeNull()
  })

  it('never overwrite each other silently: who comes second has the choice', async () => {
    const [first, second] = await twoTabs()
    first.run(renamePlan, { name: 'From the first' })
    second.run(renamePlan, { name: 'From the second' })
    await Promise.all([first.flush(), second.flush()])
    await until(() => [first, second].some((tab) => kindOf(tab) === 'conflict'), 'one sees the conflict')
    const stored = await nameIn(first)
    const [winner, loser] = stored === 'From the first' ? [first, second] : [second, first]
    expect(kindOf(loser)).toBe('conflict')
    expect(kindOf(winner)).toBe('saved')
    // Work goes on and is still not written over the other's.
    loser.run(renamePlan, { name: 'Still mine' })
    await loser.flush()
    expect(await nameIn(first)).toBe(stored)
    expect(loser.planStore.getState().plan.name).toBe('Still mine')
  })

  it('hold even without messages between them, by the revision in the transaction', async () => {
    vi.stubGlobal('BroadcastChannel', undefined)
    const [first, second] = await twoTabs()
    first.run(renamePlan, { name: 'From the first' })
    await first.flush()
    second.run(renamePlan, { name: 'From the second' })
    await second.flush()
    expect(kindOf(second)).toBe('conflict')
    expect(await nameIn(first)).toBe('From the first')
  })

  it('can keep mine as a copy, with all its undo steps', async () => {
    const [first, second] = await twoTabs()
    first.run(renamePlan, { name: 'Theirs' })
    await first.flush()
    await until(() => kindOf(second) === 'conflict', 'the second tab sees the conflict')
    second.run(renamePlan, { name: 'Mine' })
    await second.keepMineAsCopy()
    expect(kindOf(second)).toBe('saved')
    const copyId = second.planStore.getState().plan.id
    expect(copyId).not.toBe(PLAN.id)
    expect(await nameIn(second)).toBe('Theirs')
    expect(await nameIn(second, copyId)).toBe('Mine (copy)')
    second.undo()
    await second.flush()
    expect(await nameIn(second, copyId)).toBe(PLAN.name)
    expect(await nameIn(second)).toBe('Theirs')
  })

  it('can load theirs', async () => {
    const [first, second] = await twoTabs()
    first.run(renamePlan, { name: 'Theirs' })
    await first.flush()
    await until(() => kindOf(second) === 'conflict', 'the second tab sees the conflict')
    expect((await second.loadTheirs()).ok).toBe(true)
    expect(second.planStore.getState().plan.name).toBe('Theirs')
    second.run(renamePlan, { name: 'On from theirs' })
    await second.flush()
    expect(kindOf(second)).toBe('saved')
    expect(await nameIn(second)).toBe('On from theirs')
  })

  it('keep unsaved work in a copy when the bench is cleared in a conflict', async () => {
    const [first, second] = await twoTabs()
    second.run(renamePlan, { name: 'Mine' })
    first.run(renamePlan, { name: 'Theirs' })
    await first.flush()
    await second.flush()
    await until(() => kindOf(second) === 'conflict', 'the second tab sees the conflict')
    expect((await second.newPlan()).ok).toBe(true)
    const names = (await second.listPlans()).map(({ name }) => name)
    expect(names.toSorted()).toEqual(['Mine (copy)', 'Theirs'])
  })
})

describe('what was unsaved when a page was left', () => {
  /** A tab that notes its change as it is left, without time to save it. */
  async function leftTab(): Promise<BrowserTab> {
    const tab = await openTab()
    tab.putOnBench(PLAN, null)
    await tab.flush()
    tab.run(renamePlan, { name: 'Just before' })
    tab.noteUnsaved(tab.planStore.getState().plan, tab.benchRecord().revision)
    return tab
  }

  const notes = (): readonly string[] =>
    Array.from({ length: localStorage.length }, (_, n) => localStorage.key(n) ?? '').filter((key) =>
      key.startsWith('waneline-unsaved-'),
    )

  const namesIn = async (tab: BrowserTab): Promise<readonly string[]> =>
    (await tab.listPlans()).map(({ name }) => name).toSorted()

  it('is saved by the next page, once', async () => {
    await leftTab()
    const next = await openTab()
    await next.saveNotes(await next.planStorage())
    expect(await namesIn(next)).toEqual(['Just before'])
    expect(notes()).toEqual([])
  })

  it('is put beside what another tab has saved meanwhile, and the maker is told', async () => {
    await leftTab()
    const other = await tabAtWork()
    await other.openPlan(PLAN.id)
    other.run(renamePlan, { name: 'Theirs' })
    await other.flush()
    const next = await openTab()
    await next.saveNotes(await next.planStorage())
    expect(await namesIn(next)).toEqual(['Just before (copy)', 'Theirs'])
    expect(next.sessionStore.getState().notice?.code).toBe('unsaved-kept-as-copy')
  })

  it('makes no copy when there was time to save it after all', async () => {
    const left = await leftTab()
    const note = localStorage.getItem(notes()[0] ?? '')
    await left.flush()
    expect(notes()).toEqual([])
    localStorage.setItem('waneline-unsaved-x', note ?? '')
    const next = await openTab()
    await next.saveNotes(await next.planStorage())
    expect(await namesIn(next)).toEqual(['Just before'])
  })

  it('stays noted while it cannot be saved', async () => {
    await leftTab()
    const free = failing('put', 'QuotaExceededError', 'plans')
    const next = await openTab()
    await next.saveNotes(await next.planStorage())
    expect(notes()).toHaveLength(1)
    free()
    await next.saveNotes(await next.planStorage())
    expect(await namesIn(next)).toEqual(['Just before'])
  })

  it('that is no plan is kept as an original, and nonsense is dropped', async () => {
    localStorage.setItem(
      'waneline-unsaved-a',
      '{"plan":{"format":"waneline-plan","version":99},"revision":1}',
    )
    localStorage.setItem('waneline-unsaved-b', '{broken')
    const next = await openTab()
    await next.saveNotes(await next.planStorage())
    expect((await next.listKept()).map(({ name }) => name)).toEqual(['unsaved'])
    expect(notes()).toEqual([])
  })
})

describe('photos', () => {
  const HASH = '3f'.repeat(32)
  const OTHER = 'ee'.repeat(32)
  const later = (hours: number): void => {
    const now = Date.now()
    vi.spyOn(Date, 'now').mockReturnValue(now + hours * 3_600_000)
  }
  const photo = (): Blob => new Blob([new Uint8Array(100)], { type: 'image/jpeg' })

  it('stay while a stored plan shows them, and go when none does', async () => {
    const tab = await tabAtWork()
    const storage = await tab.planStorage()
    await storage.keepPhoto(HASH, photo())
    await storage.keepPhoto(OTHER, photo())
    tab.putOnBench(PLAN, null)
    await tab.flush()
    expect(await storage.dropUnusedPhotos()).toBe(0)
    later(2)
    expect(await storage.dropUnusedPhotos()).toBe(1)
    expect(await tab.getPhotoBytes(OTHER)).toBeNull()
    expect((await tab.getPhotoBytes(HASH))?.size).toBe(100)
  })

  it('stay while undo can still bring them back, even for another tab that tidies up', async () => {
    const tab = await tabAtWork()
    await (await tab.planStorage()).keepPhoto(HASH, photo())
    tab.putOnBench(PLAN, null)
    tab.run(removeSlab, { slabId: 's1' })
    await tab.flush()
    const other = await openTab()
    const storage = await other.planStorage()
    later(2)
    expect(await storage.dropUnusedPhotos()).toBe(0)
    // A tab that was closed without a word loses its lease after a week.
    later(8 * 24)
    expect(await storage.dropUnusedPhotos()).toBe(1)
  })

  it('go with the plan that is deleted', async () => {
    const tab = await tabAtWork()
    await (await tab.planStorage()).keepPhoto(HASH, photo())
    tab.putOnBench(PLAN, null)
    await tab.flush()
    later(2)
    await tab.newPlan()
    await (await tab.planStorage()).endLease(tab.TAB_ID)
    await tab.deletePlan(PLAN.id)
    expect(await tab.getPhotoBytes(HASH)).toBeNull()
    expect(await tab.listPlans()).toEqual([])
  })

  it('make room when storage is full', async () => {
    const tab = await tabAtWork()
    const storage = await tab.planStorage()
    await storage.keepPhoto(OTHER, photo())
    later(2)
    // Full until something is deleted.
    const free = failing('put', 'QuotaExceededError', 'photos')
    const realDelete = methodOf(IDBCursor.prototype, 'delete')
    vi.spyOn(IDBCursor.prototype, 'delete').mockImplementation(function (this: IDBCursor) {
      free()
      return realDelete.call(this)
    })
    expect(await storage.keepPhoto(HASH, photo())).toBeNull()
    expect(await storage.readPhoto(OTHER)).toBeNull()
    expect(await storage.readPhoto(HASH)).not.toBeNull()
  })

  it('say that storage is full when nothing can be dropped', async () => {
    const storage = await (await tabAtWork()).planStorage()
    failing('put', 'QuotaExceededError', 'photos')
    expect(await storage.keepPhoto(HASH, photo())).toEqual({ code: 'storage-full', values: {} })
  })
})
