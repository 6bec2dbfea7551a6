import { strToU8, zipSync } from 'fflate'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type BrowserTab, freshBrowser, openTab, serveFiles } from '../../tests/support/browserTab'
import { readPhotoBytes } from '../../tests/support/truth'
import type { Plan } from '../core/plan'
import { renamePlan } from './commands'
import { planText } from './planFile'

const JPEG = new Uint8Array(readPhotoBytes('d4'))

const fileOf = (bytes: BlobPart, name: string): File => new File([bytes], name)

beforeEach(() => {
  freshBrowser()
  serveFiles()
})

afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

async function tabWithDemo(): Promise<BrowserTab> {
  const tab = await openTab()
  const demo = await tab.loadDemo('kitchen-table')
  if (!demo.ok) throw new Error(demo.problem.code)
  await tab.flush()
  return tab
}

const planOf = (tab: BrowserTab): Plan => tab.planStore.getState().plan

const onlyPhoto = (plan: Plan) => {
  const [slab] = plan.slabs
  const photo = slab?.capture.kind === 'photo' ? slab.capture.photos[0] : undefined
  if (photo === undefined) throw new Error('no photo')
  return photo
}

describe('loadDemo', () => {
  it.each(['library-table', 'kitchen-table'] as const)(
    'puts the %s on the bench, photo and all',
    async (name) => {
      const tab = await openTab()
      expect((await tab.loadDemo(name)).ok).toBe(true)
      const plan = planOf(tab)
      expect(plan.invented).toBe(true)
      expect(plan.note).toContain('invented')
      expect(plan.options[0]?.footprint?.slabId).toBe(plan.slabs[0]?.id)
      expect((await tab.getPhotoBytes(onlyPhoto(plan).hash))?.type).toBe('image/jpeg')
    },
  )

  it('opens the demo as it was left, and a fresh one beside a changed one', async () => {
    const tab = await tabWithDemo()
    await tab.loadDemo('kitchen-table')
    expect(await tab.listPlans()).toHaveLength(1)
    tab.run(renamePlan, { name: 'My changed demo' })
    await tab.loadDemo('kitchen-table')
    await tab.flush()
    expect((await tab.listPlans()).map(({ name }) => name).toSorted()).toEqual([
      'Kitchen table',
      'My changed demo',
    ])
  })

  it('says so when it cannot be fetched', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('offline')))
    const tab = await openTab()
    expect(await tab.loadDemo('kitchen-table')).toEqual({
      ok: false,
      problem: { code: 'demo-unreachable', values: {} },
    })
  })
})

describe('a plan file', () => {
  it('goes from one browser to another with its photo, and saves there to the same bytes', async () => {
    const first = await tabWithDemo()
    const saved = await first.savePlanFile(planOf(first))
    expect(saved.missingPhotos).toBe(0)
    expect(saved.fileName).toBe('Kitchen-table.waneline')
    freshBrowser()
    const second = await openTab()
    const opened = await second.openFile(fileOf(saved.blob, saved.fileName))
    expect(opened).toMatchObject({ ok: true, value: { kind: 'plan', lost: [] } })
    expect(planOf(second)).toEqual(planOf(first))
    const again = await second.savePlanFile(planOf(second))
    expect(await again.blob.arrayBuffer()).toEqual(await saved.blob.arrayBuffer())
  })

  it('opens without its photo, and says that it is missing', async () => {
    const first = await tabWithDemo()
    const text = planText(planOf(first))
    freshBrowser()
    const second = await openTab()
    const opened = await second.openFile(fileOf(text, 'plan.json'))
    expect(opened).toMatchObject({
      ok: true,
      value: { lost: [{ code: 'lost-photo-file', values: { name: 'slab.jpg', owner: 'Cherry slab' } }] },
    })
    expect(second.sessionStore.getState().lost).toHaveLength(1)
    expect(planOf(second)).toEqual(planOf(first))
    expect((await second.savePlanFile(planOf(second))).missingPhotos).toBe(1)
  })

  it('finds a photo that this browser has already', async () => {
    const tab = await tabWithDemo()
    const opened = await tab.openFile(fileOf(planText(planOf(tab)), 'plan.json'))
    expect(opened).toMatchObject({ ok: true, value: { lost: [] } })
  })

  it('does not take in a photo that is not what the plan says', async () => {
    const first = await tabWithDemo()
    const plan = planOf(first)
    const { hash } = onlyPhoto(plan)
    freshBrowser()
    const wrong: readonly Uint8Array[] = [JPEG.slice(0, 50_000), strToU8('no photo'), readPhotoBytes('d2')]
    for (const photo of wrong) {
      const tab = await openTab()
      const zip = zipSync({ 'plan.json': strToU8(planText(plan)), [`photos/${hash}`]: photo })
      const opened = await tab.openFile(fileOf(new Uint8Array(zip), 'x.waneline'))
      expect(opened).toMatchObject({ ok: true, value: { lost: [{ code: 'lost-photo-damaged' }] } })
      expect(await tab.getPhotoBytes(hash)).toBeNull()
    }
  })

  it('that was edited by hand is mended, and its original can be downloaded', async () => {
    const tab = await tabWithDemo()
    const text = planText(planOf(tab)).replace('"name": "A"', '"name": 77')
    const opened = await tab.openFile(fileOf(text, 'edited.json'))
    expect(opened).toMatchObject({ ok: true, value: { lost: [{ code: 'reset-value' }] } })
    const [kept] = await tab.listKept()
    expect(kept?.name).toBe('edited.json')
    expect(await (await tab.keptFile(kept?.key ?? 0))?.text()).toBe(text)
  })

  it('leaves the bench as it is when it cannot be read', async () => {
    const tab = await tabWithDemo()
    const before = planOf(tab)
    const bad = ['{"format":"waneline-plan","version":99}', '{"format":"other"}', '{broken']
    for (const text of bad) expect((await tab.openFile(fileOf(text, 'bad.json'))).ok).toBe(false)
    expect(planOf(tab)).toBe(before)
  })

  it('never takes the place of another plan that is stored under the same id', async () => {
    const tab = await tabWithDemo()
    const text = planText({ ...planOf(tab), name: 'From elsewhere' })
    await tab.openFile(fileOf(text, 'plan.json'))
    await tab.flush()
    expect((await tab.listPlans()).map(({ name }) => name).toSorted()).toEqual([
      'From elsewhere',
      'Kitchen table',
    ])
  })
})

describe('a stored plan that cannot be read whole', () => {
  const store = async (tab: BrowserTab, json: object): Promise<void> => {
    // As an older or newer program, or a fault, may have left it.
    const stored = { ...planOf(tab), id: 'odd', name: 'Odd', ...json }
    await (await tab.planStorage()).savePlan(stored as Plan, null)
  }

  it('is mended, and its original kept before anything is saved over it', async () => {
    const tab = await tabWithDemo()
    await store(tab, { slabs: [...planOf(tab).slabs, 'oak'] })
    const opened = await tab.openPlan('odd')
    expect(opened).toMatchObject({ ok: true, value: { lost: [{ code: 'lost-slab' }] } })
    tab.run(renamePlan, { name: 'Mended' })
    await tab.flush()
    const [kept] = await tab.listKept()
    expect(await (await tab.keptFile(kept?.key ?? 0))?.text()).toContain('"oak"')
  })

  it('of a newer version stays stored untouched and can be downloaded', async () => {
    const tab = await tabWithDemo()
    const before = planOf(tab)
    await store(tab, { version: 99, future: 'things' })
    expect(await tab.openPlan('odd')).toMatchObject({
      ok: false,
      problem: { code: 'plan-newer-version', values: { version: 99, readable: 1 } },
    })
    expect(planOf(tab)).toBe(before)
    expect(await (await tab.storedPlanFile('odd'))?.text()).toContain('"future"')
  })

  it('is opened as a copy when there is no room to keep the original', async () => {
    const tab = await tabWithDemo()
    await store(tab, { slabs: [...planOf(tab).slabs, 'oak'] })
    const storage = await tab.planStorage()
    vi.spyOn(storage, 'keepOriginal').mockResolvedValue({ code: 'storage-full', values: {} })
    await tab.openPlan('odd')
    await tab.flush()
    expect(planOf(tab).id).not.toBe('odd')
    expect(await (await tab.storedPlanFile('odd'))?.text()).toContain('"oak"')
  })
})

describe('importPhoto', () => {
  it('stores the photo once under its hash, without where it was taken', async () => {
    const tab = await openTab()
    const [one, two] = [
      await tab.importPhoto(new Blob([JPEG]), 'a.jpg'),
      await tab.importPhoto(new Blob([JPEG]), 'b.jpg'),
    ]
    if (!one.ok || !two.ok) throw new Error('not imported')
    expect(one.value).toMatchObject({
      fileName: 'a.jpg',
      mediaType: 'image/jpeg',
      widthPx: 3000,
      heightPx: 2250,
    })
    expect(two.value.hash).toBe(one.value.hash)
    expect(two.value.id).not.toBe(one.value.id)
    const stored = await tab.getPhotoBytes(one.value.hash)
    const digest = await crypto.subtle.digest('SHA-256', await (stored ?? new Blob()).arrayBuffer())
    expect(Buffer.from(digest).toString('hex')).toBe(one.value.hash)
  })

  it('gives the same hash on plain http, where the browser has none of its own', async () => {
    const tab = await openTab()
    const secure = await tab.importPhoto(new Blob([JPEG]), 'a.jpg')
    const secureCrypto = crypto
    vi.stubGlobal('crypto', {
      getRandomValues: (into: Uint8Array<ArrayBuffer>) => secureCrypto.getRandomValues(into),
    })
    const plain = await tab.importPhoto(new Blob([JPEG]), 'a.jpg')
    expect(plain.ok && plain.value.hash).toBe(secure.ok && secure.value.hash)
  })

  it('refuses what is no photo, is empty, or breaks off, and stores nothing', async () => {
    const tab = await openTab()
    const codes: string[] = []
    for (const bytes of [
      new Uint8Array(),
      strToU8('just text, long enough to look at'),
      JPEG.slice(0, 40_000),
    ]) {
      const photo = await tab.openFile(fileOf(new Uint8Array(bytes), 'x.jpg'))
      codes.push(photo.ok ? 'ok' : photo.problem.code)
    }
    expect(codes).toEqual(['photo-empty', 'photo-not-an-image', 'photo-truncated'])
  })

  it('refuses a photo that decodes to another size than its header says', async () => {
    const tab = await openTab()
    vi.spyOn(tab.photoClient(), 'open').mockResolvedValue({ widthPx: 100, heightPx: 2250 })
    expect(await tab.importPhoto(new Blob([JPEG]), 'a.jpg')).toMatchObject({
      ok: false,
      problem: { code: 'photo-size-differs' },
    })
  })

  it('passes on that storage is full, and can be cancelled', async () => {
    const tab = await openTab()
    vi.spyOn(await tab.planStorage(), 'keepPhoto').mockResolvedValue({ code: 'storage-full', values: {} })
    expect(await tab.importPhoto(new Blob([JPEG]), 'a.jpg')).toMatchObject({
      ok: false,
      problem: { code: 'storage-full' },
    })
    const abort = new AbortController()
    abort.abort()
    await expect(tab.importPhoto(new Blob([JPEG]), 'a.jpg', { signal: abort.signal })).rejects.toThrow(
      'abort',
    )
  })
})

describe('a plan that is here already', () => {
  /** The demo as it was filed, and as it was changed here since. */
  async function withTwin(): Promise<{
    readonly tab: BrowserTab
    readonly twin: { id: string; savedAtMs: number }
  }> {
    const tab = await tabWithDemo()
    const filed = planOf(tab)
    tab.run(renamePlan, { name: 'Changed here' })
    await tab.flush()
    const opened = await tab.openFile(fileOf(planText(filed), 'plan.json'))
    if (!opened.ok || opened.value.kind !== 'plan' || opened.value.twin === undefined)
      throw new Error('no twin')
    expect(opened.value.twin.id).toBe(filed.id)
    expect(planOf(tab).id).not.toBe(filed.id)
    return { tab, twin: opened.value.twin }
  }

  const namesIn = async (tab: BrowserTab): Promise<readonly string[]> =>
    (await tab.listPlans()).map(({ name }) => name).toSorted()

  it('is no question when it says the same', async () => {
    const tab = await tabWithDemo()
    const opened = await tab.openFile(fileOf(planText(planOf(tab)), 'plan.json'))
    expect(opened.ok && opened.value.kind === 'plan' ? opened.value.twin : 'none').toBeUndefined()
  })

  it('leaves the file’s alone when that is chosen', async () => {
    const { tab, twin } = await withTwin()
    const { name } = planOf(tab)
    await tab.keepNewcomer(twin)
    expect(await namesIn(tab)).toEqual([name])
    expect(planOf(tab).name).toBe(name)
  })

  it('leaves the one here alone when that is chosen', async () => {
    const { tab, twin } = await withTwin()
    await tab.keepStoredPlan(twin)
    expect(await namesIn(tab)).toEqual(['Changed here'])
    expect(planOf(tab).id).toBe(twin.id)
  })

  it('keeps both under names that tell them apart', async () => {
    const { tab, twin } = await withTwin()
    await tab.keepBothPlans(twin, { newcomer: 'Table (May)', stored: 'Table (June)' })
    expect(await namesIn(tab)).toEqual(['Table (June)', 'Table (May)'])
    expect(planOf(tab).name).toBe('Table (May)')
  })
})

describe('hydrate', () => {
  it('opens on the demo in a new browser, and on the last plan in a known one', async () => {
    const first = await openTab()
    await first.hydrate()
    expect(planOf(first).id).toBe('demo-library-table')
    first.run(renamePlan, { name: 'Mine now' })
    await first.flush()
    const second = await openTab()
    await second.hydrate()
    expect(planOf(second).name).toBe('Mine now')
    expect(second.planStore.getState().save.kind).toBe('saved')
  })

  it('opens on a blank plan when nothing is stored and the demo cannot be had', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('offline')))
    const tab = await openTab()
    await tab.hydrate()
    expect(planOf(tab).slabs).toEqual([])
    expect(tab.sessionStore.getState().notice?.code).toBe('demo-unreachable')
  })
})
