import { expect, it } from 'vitest'
import { brokenFile } from '../support/brokenFiles'
import { openApp } from '../support/browser'
import { casesOf, firstSeed, reportCampaign } from '../support/campaignReport'
import { openBrokenInPage, watchForScripts } from '../support/openBrokenInPage'

it('broken files in the built program: nothing runs, nothing breaks, the console stays empty', async () => {
  const cases = casesOf(170)
  const { page, close } = await openApp()
  await page.locator('.stage[aria-current="step"]').waitFor()
  const seen = watchForScripts(page)
  const sayings: Record<string, number> = {}
  for (let seed = firstSeed(); seed < firstSeed() + cases; seed++) {
    const file = brokenFile(seed)
    const said = await openBrokenInPage(page, file, `seed ${seed}, ${file.kind}`)
    const key = `${file.kind}: ${said.length === 0 ? 'opened without a word' : 'said why'}`
    sayings[key] = (sayings[key] ?? 0) + 1
  }
  reportCampaign('broken files in the page', { firstSeed: firstSeed(), cases, sayings })
  expect(seen).toEqual([])
  await close()
})
