import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Plan } from '../../src/core/plan'
import { appTest } from '../support/appTest'
import { reportPath, saveScreenshot } from '../support/browser'

const demoPlan = (): Plan =>
  JSON.parse(
    readFileSync(fileURLToPath(new URL('../../demo-data/library-table/plan.json', import.meta.url)), 'utf8'),
  ) as Plan

async function openPlanFile(page: Page, plan: Plan): Promise<void> {
  const choosing = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Menu' }).click()
  await page.getByText('Open a photo or a saved job').first().click()
  await (
    await choosing
  ).setFiles({
    name: 'table.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(plan)),
  })
}

const atTable = (page: Page): Promise<void> =>
  page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()

appTest('a plan that is here already asks which to keep, and both are named by date', async ({ desktop }) => {
  const { page } = desktop
  await atTable(page)
  await openPlanFile(page, { ...demoPlan(), name: 'Changed on the phone' })
  const question = page.getByRole('dialog')
  await question.getByText(/is here already/).waitFor()
  await saveScreenshot(page, 'which plan to keep')
  await question.getByRole('button', { name: 'Keep both, named by date' }).click()
  await expect
    .poll(() => page.locator('.plan-name input').inputValue())
    .toMatch(/^Changed on the phone \(.*\d{4}.*\)$/)
})

appTest('the client sees two options beside each other, at one scale', async ({ desktop }) => {
  const { page } = desktop
  await atTable(page)
  const plan = demoPlan()
  const [option] = plan.options
  if (option === undefined) throw new Error('the demo has no option')
  const shorter = {
    ...option,
    id: 'second',
    name: 'Shorter',
    table: { ...option.table, outline: { kind: 'rectangle', lengthMm: 1500, widthMm: 800 } as const },
    placements: [],
  }
  await openPlanFile(page, { ...plan, id: 'two-options', options: [option, shorter] })
  await page.getByRole('navigation').getByRole('button', { name: /Paper/ }).click()
  const canvas = page.locator('.client-picture[data-standing="drawn"]')
  await canvas.waitFor()
  const heightOf = (): Promise<number> => canvas.evaluate((shown) => (shown as HTMLCanvasElement).height)
  const one = await heightOf()
  await page.getByRole('checkbox', { name: 'All options together, up to three' }).check()
  await expect.poll(heightOf).toBeGreaterThan(one * 1.5)
  await canvas.waitFor()
  await canvas.scrollIntoViewIfNeeded()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'PNG for print' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/-picture-print\.png$/)
  const path = reportPath('screenshots', 'two-options.png')
  await download.saveAs(path)
  const bytes = readFileSync(path)
  // Width of a PNG: bytes 16 to 19 (ISO/IEC 15948, 11.2.2). 4000 px are 340 mm at 300 dots to the inch.
  expect(bytes.readUInt32BE(16)).toBe(4000)
})

appTest('the plan is handed over as a file where the browser has no share sheet', async ({ phone }) => {
  const { page } = phone
  await atTable(page)
  await page.getByRole('navigation').getByRole('button', { name: /Paper/ }).click()
  const button = page.getByRole('button', { name: /^(Share the plan|Save the plan to a file)$/ })
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()])
  expect(download.suggestedFilename()).toMatch(/\.waneline$/)
  await saveScreenshot(page, 'hand over on a phone')
})
