import { chromium } from 'playwright-core'
import { afterEach, expect, inject, it } from 'vitest'
import { appTest } from '../support/appTest'
import { BROKEN_KINDS, brokenFile } from '../support/brokenFiles'
import { deskServer } from '../support/deskServer'
import { killInSaves } from '../support/killInSave'
import { openBrokenInPage, watchForScripts } from '../support/openBrokenInPage'
import { seededRandom } from '../support/seededRandom'

// Slices of the campaign, which does much more of the same.

const closing: (() => Promise<void>)[] = []

afterEach(async () => {
  for (const close of closing.splice(0).toReversed()) await close()
})

appTest(
  'a broken file of every kind: nothing runs, nothing breaks, each has its sentence',
  async ({ desktop }) => {
    const { page } = desktop
    await page.locator('.stage[aria-current="step"]').waitFor()
    const seen = watchForScripts(page)
    let sayings = 0
    for (const seed of BROKEN_KINDS.keys()) {
      const file = brokenFile(seed)
      const said = await openBrokenInPage(page, file, `seed ${seed}, ${file.kind}`)
      if (said.length > 0) sayings++
    }
    expect(seen).toEqual([])
    expect(sayings).toBeGreaterThan(BROKEN_KINDS.length / 2)
  },
)

it('kills in mid-save leave the plan before or the plan after, whole', async () => {
  const server = await deskServer()
  closing.push(server.close)
  const browser = await chromium.connect(inject('browserEndpoint'))
  closing.push(() => browser.close())
  const context = await browser.newContext()
  const figures = await killInSaves(server, context, 6, seededRandom(6))
  expect(figures.foundBefore + figures.foundAfter).toBe(6)
})

appTest(
  'a full disk is said, nothing is lost, and the save comes when there is room again',
  async ({ desktop }) => {
    const { page } = desktop
    await page.locator('.stage[aria-current="step"]').waitFor()
    await page.getByText(/^Saved /).waitFor()
    // What a browser does when its disk is full; the limit itself cannot be set from outside.
    await page.evaluate(() => {
      const methodOf = <T, K extends keyof T>(prototype: T, key: K): T[K] => prototype[key]
      const put = methodOf(IDBObjectStore.prototype, 'put')
      const marks: Record<string, unknown> = globalThis as unknown as Record<string, unknown>
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args) {
        if (marks['hasRoom'] !== true) throw new DOMException('no room', 'QuotaExceededError')
        return put.apply(this, args)
      }
    })
    const name = page.getByRole('textbox', { name: 'Name of this job' })
    await name.fill('On a full disk')
    await name.press('Enter')
    await page.getByText('this browser has no room left').waitFor()
    expect(await name.inputValue()).toBe('On a full disk')
    await page.evaluate(() => Object.assign(globalThis, { hasRoom: true }))
    await name.fill('With room again')
    await name.press('Enter')
    await page.getByText(/^Saved /).waitFor()
    await page.reload()
    await page.locator('.stage[aria-current="step"]').waitFor()
    expect(await name.inputValue()).toBe('With room again')
  },
)

appTest(
  'a browser that keeps nothing says so, and the job can still be done and saved to a file',
  async ({ desktop }) => {
    const { page, context } = desktop
    await context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('storage is switched off', 'SecurityError')
      }
    })
    await page.reload()
    await page.getByText('This browser keeps nothing for this page').waitFor()
    await page.getByText('Kept only until this window is closed').waitFor()
    const name = page.getByRole('textbox', { name: 'Name of this job' })
    await name.fill('In a private window')
    await name.press('Enter')
    const download = page.waitForEvent('download')
    await page.keyboard.press('Control+s')
    expect((await download).suggestedFilename()).toBe('In-a-private-window.waneline')
  },
)
