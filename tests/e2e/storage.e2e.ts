import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest'
import { deskServer, type DeskServer } from '../support/deskServer'
import type { Desk } from '../workers/desk'

// Saving in a real browser's database, on a page of its own (tests/workers/desk.html).

declare const desk: Desk

let server: DeskServer
let browser: Browser
let context: BrowserContext

beforeAll(async () => {
  server = await deskServer()
  browser = await chromium.connect(inject('browserEndpoint'))
})

afterAll(async () => {
  await browser?.close()
  await server?.close()
})

beforeEach(async () => {
  context = await browser.newContext()
})

afterEach(() => context.close())

async function started(): Promise<Page> {
  const page = await server.open(context)
  await page.evaluate(() => desk.hydrate())
  return page
}

const rename = (page: Page, name: string): Promise<void> =>
  page.evaluate((given) => desk.run(desk.renamePlan, { name: given }), name)

const nameOn = (page: Page): Promise<string> => page.evaluate(() => desk.planStore.getState().plan.name)

const saveOn = (page: Page): Promise<string> => page.evaluate(() => desk.planStore.getState().save.kind)

describe('saving in Chromium', () => {
  it('keeps a change that was made the moment before the page was reloaded', async () => {
    const page = await started()
    await expect.poll(() => saveOn(page)).toBe('saved')
    await rename(page, 'Just before')
    expect(await saveOn(page)).toBe('unsaved')
    await page.reload()
    await page.waitForFunction(() => 'desk' in globalThis)
    await page.evaluate(() => desk.hydrate())
    expect(await nameOn(page)).toBe('Just before')
    const photo = await page.evaluate(async () => {
      const capture = desk.planStore.getState().plan.slabs[0]?.capture
      const hash = capture?.kind === 'photo' ? capture.photos[0]?.hash : undefined
      return (await desk.getPhotoBytes(hash ?? ''))?.size ?? 0
    })
    expect(photo).toBeGreaterThan(1_000_000)
  })

  it('keeps what was saved when the page is killed, and nothing half written', async () => {
    const page = await started()
    await rename(page, 'Saved')
    await expect.poll(() => saveOn(page)).toBe('saved')
    await rename(page, 'Perhaps saved')
    const session = await context.newCDPSession(page)
    // Ends the page's process without a word: no pagehide, no last save.
    const gone = page.waitForEvent('crash')
    session.send('Page.crash').catch(() => undefined)
    await gone
    const after = await started()
    expect(['Saved', 'Perhaps saved']).toContain(await nameOn(after))
  })

  it('tells a second tab, and never lets one write over the other', async () => {
    const first = await started()
    await expect.poll(() => saveOn(first)).toBe('saved')
    const second = await started()
    const noticeOf = (page: Page): Promise<string | undefined> =>
      page.evaluate(() => desk.sessionStore.getState().notice?.code)
    await expect.poll(() => noticeOf(second)).toBe('plan-open-elsewhere')
    await rename(first, 'From the first')
    await expect.poll(() => saveOn(first)).toBe('saved')
    await expect.poll(() => saveOn(second)).toBe('conflict')
    await rename(second, 'From the second')
    await second.waitForTimeout(1_500)
    expect(await saveOn(second)).toBe('conflict')
    const third = await started()
    expect(await nameOn(third)).toBe('From the first')
  })
})
