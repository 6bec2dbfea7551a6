import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type BrowserTab, closedBrowser, freshBrowser, openTab } from '../../tests/support/browserTab'
import { frozenPlan } from '../../tests/support/frozenPlan'
import { removeSlab, renamePlan } from './commands'
import { MOST_VERSIONS } from './thinVersions'

const PLAN = frozenPlan()
const HASH = '3f'.repeat(32)
const stops: (() => void)[] = []
let nowMs = 0

beforeEach(() => {
  freshBrowser()
  nowMs = Date.UTC(2026, 4, 1)
  vi.spyOn(Date, 'now').mockImplementation(() => nowMs)
})

afterEach(() => {
  for (const stop of stops.splice(0)) stop()
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

async function tabAtWork(): Promise<BrowserTab> {
  const tab = await openTab()
  stops.push(tab.startAutosave())
  tab.putOnBench(PLAN, null)
  await tab.flush()
  return tab
}

async function renamed(tab: BrowserTab, name: string): Promise<void> {
  nowMs += 60_000
  tab.run(renamePlan, { name })
  await tab.flush()
}

/** A method as it is, to be called on whatever it belongs to. */
const methodOf = <T, K extends keyof T>(prototype: T, name: K): T[K] => prototype[name]

const namesOf = async (tab: BrowserTab): Promise<readonly string[]> =>
  (await tab.listVersions()).map(({ plan }) => plan.name)

describe.each(['browser', 'memory'] as const)('earlier versions in the %s', (kind) => {
  beforeEach(() => {
    if (kind === 'memory') closedBrowser()
  })

  it('are one for each save, newest first, and the newest is what lies on the bench', async () => {
    const tab = await tabAtWork()
    expect((await tab.planStorage()).kind).toBe(kind)
    await renamed(tab, 'Second')
    await renamed(tab, 'Third')
    expect(await namesOf(tab)).toEqual(['Third', 'Second', PLAN.name])
    expect((await tab.listVersions()).map(({ isNow }) => isNow)).toEqual([true, false, false])
  })

  it('are thinned, and the first and the last stay', async () => {
    const tab = await tabAtWork()
    for (let n = 1; n <= 40; n++) await renamed(tab, `Save ${n}`)
    const names = await namesOf(tab)
    expect(names).toHaveLength(MOST_VERSIONS)
    expect(names[0]).toBe('Save 40')
    expect(names.at(-1)).toBe(PLAN.name)
  })

  it('come back as a step that can be undone, which is saved like any other', async () => {
    const tab = await tabAtWork()
    await renamed(tab, 'Second')
    nowMs += 60_000
    tab.run(removeSlab, { slabId: 's1' })
    await tab.flush()
    const first = (await tab.listVersions()).at(-1)
    if (first === undefined) throw new Error('no version')
    nowMs += 60_000
    tab.goBackToVersion(first)
    expect(tab.planStore.getState().plan).toEqual(PLAN)
    await tab.flush()
    expect(tab.planStore.getState().save.kind).toBe('saved')
    tab.undo()
    expect(tab.planStore.getState().plan.name).toBe('Second')
    expect(tab.planStore.getState().plan.slabs).toHaveLength(PLAN.slabs.length - 1)
  })

  it('keep the photos that they show', async () => {
    const tab = await tabAtWork()
    const storage = await tab.planStorage()
    await storage.keepPhoto(HASH, new Blob([new Uint8Array(9)]))
    nowMs += 60_000
    tab.run(removeSlab, { slabId: 's1' })
    await tab.flush()
    await storage.endLease(tab.TAB_ID)
    nowMs += 30 * 24 * 3_600_000
    expect(await storage.dropUnusedPhotos()).toBe(0)
    await storage.deletePlan(PLAN.id)
    expect(await tab.listVersions()).toEqual([])
    expect(await storage.dropUnusedPhotos()).toBe(1)
  })
})

describe('earlier versions', () => {
  it('make room for the save when the browser is full', async () => {
    const tab = await tabAtWork()
    await renamed(tab, 'Second')
    const put = methodOf(IDBObjectStore.prototype, 'put')
    const clear = methodOf(IDBObjectStore.prototype, 'clear')
    let isFull = true
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (isFull && this.name === 'plans') throw new DOMException('made for a test', 'QuotaExceededError')
      return put.apply(this, args)
    })
    vi.spyOn(IDBObjectStore.prototype, 'clear').mockImplementation(function (this: IDBObjectStore) {
      isFull = false
      return clear.call(this)
    })
    await renamed(tab, 'Third')
    expect(tab.planStore.getState().save.kind).toBe('saved')
    expect(await namesOf(tab)).toEqual(['Third'])
  })
})
