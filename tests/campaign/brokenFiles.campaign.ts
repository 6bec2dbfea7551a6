import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { brokenFile } from '../support/brokenFiles'
import { freshBrowser, openTab } from '../support/browserTab'
import { casesOf, firstSeed, reportCampaign } from '../support/campaignReport'
import { frozenPlan } from '../support/frozenPlan'
import { openAllBroken } from '../support/openBroken'

beforeEach(freshBrowser)
afterEach(() => {
  vi.unstubAllGlobals()
})

it('broken files lose nothing, and each refusal has its sentence', async () => {
  const cases = casesOf(1000)
  const tab = await openTab()
  tab.putOnBench(frozenPlan(), null)
  await tab.flush()
  const counts = await openAllBroken(
    tab,
    Array.from({ length: cases }, (_, n) => firstSeed() + n),
    brokenFile,
  )
  reportCampaign('broken files', { firstSeed: firstSeed(), cases, counts })
  expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(cases)
})
