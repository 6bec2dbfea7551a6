import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { BROKEN_KINDS, brokenFile } from '../support/brokenFiles'
import { type BrowserTab, freshBrowser, openTab } from '../support/browserTab'
import { frozenPlan } from '../support/frozenPlan'
import { openAllBroken, openBroken } from '../support/openBroken'

// A slice of the campaign: `npm run campaign` opens many more.
const SEEDS = Array.from({ length: 4 * BROKEN_KINDS.length }, (_, n) => 7000 + n)

beforeEach(freshBrowser)
afterEach(() => {
  vi.unstubAllGlobals()
})

async function tabAtWork(): Promise<BrowserTab> {
  const tab = await openTab()
  tab.putOnBench(frozenPlan(), null)
  await tab.flush()
  return tab
}

describe('broken files', () => {
  it('are the same for the same seed, and of every kind', () => {
    expect(brokenFile(7003)).toEqual(brokenFile(7003))
    expect(new Set(SEEDS.map((seed) => brokenFile(seed).kind)).size).toBe(BROKEN_KINDS.length)
  })

  it(`lose nothing, and each refusal has its sentence: seeds ${SEEDS[0]} to ${SEEDS.at(-1)}`, async () => {
    const counts = await openAllBroken(await tabAtWork(), SEEDS, brokenFile)
    const total = Object.values(counts).reduce((sum, count) => sum + count, 0)
    expect(total).toBe(SEEDS.length)
    const of = (outcome: string): number =>
      Object.entries(counts).reduce((sum, [key, count]) => (key.endsWith(outcome) ? sum + count : sum), 0)
    expect(of('refused')).toBeGreaterThan(10)
    expect(of('opened in part')).toBeGreaterThan(5)
  })

  it('would be noticed if a refusal had no sentence or the bench had changed', async () => {
    const tab = await tabAtWork()
    const file = { kind: 'noise', name: 'x', bytes: new Uint8Array(9) } as const
    const mute = {
      ...tab,
      openFile: async () => ({ ok: false, problem: { code: 'no-such-code', values: {} } }) as const,
    }
    await expect(openBroken(mute, file, 1)).rejects.toThrow('no sentence')
    const careless: BrowserTab = {
      ...tab,
      openFile: async () => {
        await tab.newPlan()
        return { ok: false, problem: { code: 'photo-empty', values: {} } }
      },
    }
    await expect(openBroken(careless, file, 1)).rejects.toThrow('the bench has changed')
  })
})
