import { type Browser, chromium } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, it } from 'vitest'
import { casesOf, firstSeed, reportCampaign } from '../support/campaignReport'
import { deskServer, type DeskServer } from '../support/deskServer'
import { killInSaves } from '../support/killInSave'
import { seededRandom } from '../support/seededRandom'

let server: DeskServer
let browser: Browser

beforeAll(async () => {
  server = await deskServer()
  browser = await chromium.connect(inject('browserEndpoint'))
})

afterAll(async () => {
  await browser?.close()
  await server?.close()
})

it('pages killed in mid-save leave the plan before or the plan after, whole, with its photo', async () => {
  const kills = casesOf(200)
  const context = await browser.newContext()
  const figures = await killInSaves(server, context, kills, seededRandom(firstSeed()))
  reportCampaign('kills', { firstSeed: firstSeed(), ...figures })
  expect(figures.foundBefore + figures.foundAfter).toBe(kills)
  // Kills that all came too late, or all too early, would show nothing.
  expect(figures.killsWithin).toBeGreaterThanOrEqual(Math.min(50, kills / 4))
})
