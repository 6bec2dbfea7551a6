import { readFileSync } from 'node:fs'
import { expect } from 'vitest'
import type { Page } from 'playwright-core'
import { ANSWERS_ON_THE_SPOT, type BuildResult, computePlan, parsePlan, type Plan } from '../../src/core/plan'
import { formatMass, formatMoney } from '../../src/core/units'
import { appTest } from '../support/appTest'
import { button, stage } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, type Hand, mouseHand } from '../support/hand'
import { printToPdf, readPdf, savePdf } from '../support/pdf'

const MM = { system: 'mm' } as const

function demoPlan(change: (plan: Plan) => Plan = (plan) => plan): Plan {
  const json: unknown = JSON.parse(
    readFileSync(new URL('../../demo-data/library-table/plan.json', import.meta.url), 'utf8'),
  )
  const parsed = parsePlan(json)
  if (!parsed.ok) throw new Error(parsed.problem.code)
  return change(parsed.value.plan)
}

function buildOf(plan: Plan): BuildResult {
  const [option] = computePlan(plan, ANSWERS_ON_THE_SPOT).options.values()
  if (option?.build.state !== 'ready') throw new Error('the build is not ready')
  return option.build.value
}

const euros = (cents: number): string => formatMoney(cents, 'EUR', 'en')

/** Opens a stage of the demo job in millimetres and waits until its figures are there. */
async function openBuild(hand: Hand, name: RegExp): Promise<void> {
  const { page } = hand
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  await hand.press(stage(hand, name))
  await settled(page)
}

const settled = (page: Page): Promise<void> =>
  page.locator('.build-results:not([data-old])').waitFor({ timeout: 60_000 })

const panelText = async (page: Page): Promise<string> =>
  (await page.locator('.stage-panel').innerText()).replaceAll('\u00a0', ' ')

appTest('the form, its sheets and the weights on the page are those worked out here', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await openBuild(hand, /^Form/)
  const build = buildOf(demoPlan())
  const { form, weight } = build
  await expect.poll(() => panelText(desktop.page)).toContain(formatMass(weight.topKg, MM))
  const text = await panelText(desktop.page)
  for (const mass of [weight.slabKg, weight.castKg]) expect(text).toContain(formatMass(mass, MM))
  for (const { name } of form?.parts ?? []) expect(text).toContain(name)
  expect(text).toContain('not a licence to lift')
  expect(await desktop.page.locator('.sheet-diagram .sheet-part').count()).toBe(form?.parts.length)
  await saveScreenshot(desktop.page, 'form')
})

appTest('an hour of another price changes the quote, and undo brings it back', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await openBuild(hand, /^Price/)
  const dearer = (plan: Plan): Plan => ({ ...plan, shop: { ...plan.shop, hourCents: 6000 } })
  const before = euros(buildOf(demoPlan()).price.quote.totalCents)
  const after = euros(buildOf(demoPlan(dearer)).price.quote.totalCents)
  expect(after).not.toBe(before)
  await expect.poll(() => panelText(page)).toContain(before)
  const hour = page.getByLabel('One hour', { exact: true })
  await hour.fill('60')
  await hour.press('Enter')
  await expect.poll(() => panelText(page), { timeout: 20_000 }).toContain(after)
  // In a box the same keys undo what is typed.
  await hour.blur()
  await page.keyboard.press('Control+z')
  await expect.poll(() => panelText(page), { timeout: 20_000 }).toContain(before)
})

appTest('the client sees no inside figure, and money is in the currency chosen', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await openBuild(hand, /^Price/)
  const quote = page.locator('.build-results')
  await page.getByLabel('Money is in').selectOption('GBP')
  await expect.poll(() => quote.innerText(), { timeout: 20_000 }).toContain('£')
  expect(await quote.innerText()).toContain('Overhead')
  await hand.press(page.getByRole('radio', { name: 'The client' }))
  const text = await quote.innerText()
  expect(text).not.toMatch(/Overhead|Hours|Mark-up|€/)
  expect(text).toContain('Deposit')
})

appTest('a table that is longer stands beside the first with its price', async ({ phone }) => {
  const { page } = phone
  const hand = fingerHand(page)
  await openBuild(hand, /^Price/)
  await hand.press(page.getByRole('button', { name: 'Set it beside' }))
  const cards = page.locator('[data-option]')
  await expect.poll(() => cards.count()).toBe(2)
  const totalOf = async (at: number): Promise<string> =>
    (await cards.nth(at).locator('.figures-total dd').innerText()).replaceAll('\u00a0', ' ')
  await expect.poll(() => totalOf(1), { timeout: 30_000 }).toMatch(/^€[\d,.]+$/)
  expect(await totalOf(0)).toBe(euros(buildOf(demoPlan()).price.quote.totalCents))
  expect(await totalOf(1)).not.toBe(await totalOf(0))
})

appTest('a step put before what it needs is flagged and stays there', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await openBuild(hand, /^Price/)
  const early = page.locator('[data-step="final-cuts"]')
  await hand.press(early.getByRole('button', { name: /^Earlier/ }))
  await expect.poll(() => early.innerText(), { timeout: 20_000 }).toContain('Comes too early')
  expect(await page.locator('[data-step="measure-again"]').innerText()).not.toContain('Comes too early')
})

appTest('a quote is printed for the client, on one upright page', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await openBuild(hand, /^Price/)
  await hand.press(stage(hand, /^Paper/))
  const choice = page.locator('.sheet-choice input')
  await choice.first().waitFor()
  for (const box of await choice.all()) if (await box.isChecked()) await box.uncheck()
  await page.getByLabel('Quote, for the client').check()
  const { quote } = buildOf(demoPlan()).price
  await expect.poll(() => page.locator('.stage-panel').innerHTML()).toContain(euros(quote.totalCents))
  const bytes = await printToPdf(page)
  savePdf(bytes, 'quote')
  const pdf = await readPdf(bytes)
  expect(pdf).toHaveLength(1)
  const [sheet] = pdf
  expect(sheet?.heightMm).toBeGreaterThan(sheet?.widthMm ?? Infinity)
  const words = sheet?.texts.map(({ text }) => text) ?? []
  for (const cents of [quote.totalCents, quote.depositCents, quote.balanceCents])
    expect(words).toContain(euros(cents))
  expect(words.join('\n')).not.toMatch(/Overhead|Mark-up|Hours/)
})
