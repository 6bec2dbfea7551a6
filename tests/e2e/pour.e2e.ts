import { readFileSync } from 'node:fs'
import ICAL from 'ical.js'
import { chromium, type Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import {
  ANSWERS_ON_THE_SPOT,
  answerPour,
  computePlan,
  hourText,
  type Option,
  parsePlan,
  type Plan,
  type PourResult,
  type PourTask,
} from '../../src/core/plan'
import { pourEvents, type PourHeat } from '../../src/core/resin'
import { formatMass, formatTemperature, formatVolume } from '../../src/core/units'
import { appTest } from '../support/appTest'
import { button, field, stage } from '../support/bench'
import { reportPath, saveScreenshot } from '../support/browser'
import { deskServer } from '../support/deskServer'
import { fingerHand, type Hand, mouseHand } from '../support/hand'
import { printToPdf, readPdf, savePdf } from '../support/pdf'
import type { Desk } from '../workers/desk'

declare const desk: Desk

const MM = { system: 'mm' } as const

function demoPlan(resin: Partial<Option['resin']> = {}): Plan {
  const json: unknown = JSON.parse(
    readFileSync(new URL('../../demo-data/library-table/plan.json', import.meta.url), 'utf8'),
  )
  const parsed = parsePlan(json)
  if (!parsed.ok) throw new Error(parsed.problem.code)
  const { plan } = parsed.value
  return {
    ...plan,
    options: plan.options.map((option) => ({ ...option, resin: { ...option.resin, ...resin } })),
  }
}

function pourOf(plan: Plan): PourResult & { readonly heat: PourHeat } {
  const [option] = computePlan(plan, ANSWERS_ON_THE_SPOT).options.values()
  if (option?.pour.state !== 'ready') throw new Error('the pour is not ready')
  const { heat } = option.pour.value
  if (heat === null) throw new Error('no heat')
  return { ...option.pour.value, heat }
}

function taskOf(plan: Plan): PourTask {
  const [option] = computePlan(plan).options.values()
  if (option?.pourTask.state !== 'ready') throw new Error('no task')
  return option.pourTask.value
}

/** Opens the pour of the demo job in millimetres and waits until its figures are there. */
async function openPour(hand: Hand): Promise<void> {
  const { page } = hand
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  await hand.press(stage(hand, /^Pour/))
  await settled(page)
}

const settled = (page: Page): Promise<void> =>
  page.locator('.pour-results:not([data-old])').waitFor({ timeout: 60_000 })

const textOf = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).allInnerTexts()).join('\n').replaceAll('\u00a0', ' ')

/** Every figure of every pour on the page is that of the plan worked out here. */
async function checkPours(page: Page, pour: PourResult & { readonly heat: PourHeat }): Promise<void> {
  const cards = page.locator('[data-layer]')
  await expect.poll(() => cards.count()).toBe(pour.heat.layers.length)
  for (const [index, layer] of pour.heat.layers.entries()) {
    const text = (await cards.nth(index).innerText()).replaceAll('\u00a0', ' ')
    const { parts } = layer.need
    const kg = (value: number | null): string => formatMass(value ?? NaN, MM)
    const litres = (value: number | null): string => formatVolume(value ?? NaN, MM)
    for (const figure of [
      `${litres(layer.need.mixLitres)}, ${kg(layer.need.massKg)}`,
      `${kg(parts.resinKg)} + ${kg(parts.hardenerKg)}`,
      `${litres(parts.resinLitres)} + ${litres(parts.hardenerLitres)}`,
      `about ${formatTemperature(layer.corePeakC, MM)}`,
      ...layer.looks.map((look) => `: about ${formatTemperature(look.surfaceC, MM)}`),
    ]) {
      expect(text).toContain(figure)
    }
    expect(await field(mouseHand(page), `Start of pour ${layer.layer}`).inputValue()).toBe(
      hourText(layer.startHour, null),
    )
  }
}

async function checkChart(page: Page, { heat }: { readonly heat: PourHeat }): Promise<void> {
  const hottest = formatTemperature(Math.max(...heat.chart.coreC), MM)
  const label = await page.locator('.heat-lines').getAttribute('aria-label')
  expect(label).toContain(`hottest at about ${hottest}`)
  // The same in figures, for whoever cannot see the lines.
  await page.locator('summary', { hasText: 'The chart as a table' }).click()
  const rows = await textOf(page, '.more-inputs[open] tbody')
  expect(rows.split('\n').length).toBeGreaterThan(20)
  const shades = await page.locator('.heat-map canvas').evaluate((canvas) => {
    if (!(canvas instanceof HTMLCanvasElement)) return 0
    const image = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height)
    const seen = new Set<number>()
    for (let at = 0; at < (image?.data.length ?? 0); at += 4)
      if (image?.data[at + 3] === 255) seen.add(image.data[at] ?? 0)
    return seen.size
  })
  expect(shades).toBeGreaterThan(3)
  await page.locator('summary', { hasText: 'The chart as a table' }).click()
}

async function checkCalendar(hand: Hand, heat: PourHeat): Promise<void> {
  const { page } = hand
  await hand.type(field(hand, 'Day of the first pour'), '2027-03-15')
  const downloading = page.waitForEvent('download')
  await hand.press(button(hand, 'Put it in my calendar'))
  const download = await downloading
  expect(download.suggestedFilename()).toBe('pours.ics')
  const path = reportPath('files', 'pours.ics')
  await download.saveAs(path)
  const bytes = readFileSync(path)
  const events = new ICAL.Component(ICAL.parse(bytes.toString('utf8')))
    .getAllSubcomponents('vevent')
    .map((part) => new ICAL.Event(part))
  const expected = pourEvents(heat, demoPlan().options[0]?.resin.handlingMinutes ?? 0)
  expect(events).toHaveLength(expected.length)
  events.forEach((event, index) => {
    const at = new Date(Date.UTC(2027, 2, 15) + Math.round((expected[index]?.hour ?? NaN) * 60) * 60_000)
    expect(event.startDate.toString()).toBe(at.toISOString().slice(0, 19))
    expect(event.summary).toContain('Reading-room table')
  })
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length)
  // RFC 5545, 3.1: lines of at most 75 octets, each ended by CR LF, and no lone line feed.
  const lines = bytes.toString('latin1').split('\r\n')
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(75)
  expect(lines.join('')).not.toMatch(/[\r\n]/)
}

async function checkMixCard(hand: Hand, heat: PourHeat): Promise<void> {
  const { page } = hand
  await hand.press(stage(hand, /^Paper/))
  await page.getByRole('radio', { name: 'A4' }).check()
  await page.locator('.sheet-previews [aria-label*="Mix card"]').first().waitFor()
  const bytes = await printToPdf(page)
  savePdf(bytes, 'pour mix card')
  const pages = await readPdf(bytes)
  const words = pages
    .map(({ texts }) => texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join('\n'))
    .filter((text) => text.includes('Mix card'))
  expect(words.length).toBeGreaterThan(0)
  const all = words.join('\n')
  for (const { layer, batches, need } of heat.layers) {
    for (let batch = 1; batch <= batches.count; batch += 1) {
      expect(all).toContain(`Pour ${layer}, batch ${batch} of ${batches.count}`)
    }
    expect(all.replaceAll('\n', ' ')).toContain(`${formatVolume(need.mixLitres, MM)} to mix`)
    // The demo's product is invented: what would be weighed by its sheet stays off the card.
    expect(all.split('\n')).not.toContain(formatMass(batches.partsEach.hardenerKg ?? NaN, MM))
  }
}

appTest(
  'from the demo job to its pours, their chart, the calendar and the mix card, in the figures of computePlan',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const { page } = desktop
    const pour = pourOf(demoPlan())
    await openPour(hand)
    await checkPours(page, pour)
    await checkChart(page, pour)
    await saveScreenshot(page, 'pour desktop')
    await checkCalendar(hand, pour.heat)
    await checkMixCard(hand, pour.heat)
  },
)

appTest('the pours follow the room by a handle, in one step that can be undone', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  const { page } = desktop
  await openPour(hand)
  const slider = page.getByRole('slider', { name: 'Room temperature' })
  await slider.focus()
  for (let step = 0; step < 9; step += 1) await page.keyboard.press('ArrowRight')
  await expect.poll(() => slider.inputValue()).toBe('30')
  await settled(page)
  await checkPours(page, pourOf(demoPlan({ room: { kind: 'steady', roomC: 30 } })))
  for (let step = 0; step < 9; step += 1) await page.keyboard.press('Control+z')
  await expect.poll(() => slider.inputValue()).toBe('21')
  await settled(page)
  await checkPours(page, pourOf(demoPlan()))
})

appTest(
  'a layer changed by hand stays, the rest follows, and what is unwise is said',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const { page } = desktop
    await openPour(hand)
    await hand.type(field(hand, 'Depth of pour 1'), '49')
    await settled(page)
    const layers = [{ depthMm: 49, startHour: null }]
    await checkPours(page, pourOf(demoPlan({ layers })))
    const issues = await textOf(page, '.issues')
    expect(issues).toMatch(/Pour 1 is 49 mm deep; with its margin the plan would stop at 45 mm/)
    await hand.press(button(hand, /Leave it to the plan/))
    await settled(page)
    await checkPours(page, pourOf(demoPlan()))
  },
)

appTest('figures that cannot be are named, and what does not need them stays', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  const { page } = desktop
  const { need, holdDown } = pourOf(demoPlan())
  await openPour(hand)
  await hand.press(page.getByText('Mix ratio and densities'))
  await hand.type(field(hand, 'Hardener'), '-1')
  await page.getByText(/A mix ratio of 2 to .1 cannot be/).waitFor()
  await settled(page)
  const text = await textOf(page, '.pour-results')
  expect(text).toContain(formatVolume(need?.mixLitres ?? NaN, MM))
  expect(text).toContain(holdDown[0]?.pieceName)
})

appTest(
  'the stages can be reached on a phone, and the pour is read and changed by touch',
  async ({ phone }) => {
    const hand = fingerHand(phone.page)
    const { page } = phone
    await openPour(hand)
    await hand.press(page.getByRole('button', { name: 'Pull the panel up' }))
    const row = await page.locator('.stages').evaluate((list) => {
      const stages = [...list.querySelectorAll('button')]
      const open = list.querySelector('[aria-current]')?.getBoundingClientRect()
      return {
        count: stages.length,
        narrowest: Math.min(...stages.map((stage) => stage.getBoundingClientRect().width)),
        openFrom: open?.left ?? -1,
        openTo: open?.right ?? Infinity,
        width: list.clientWidth,
      }
    })
    // The row is longer than a phone is wide: each stage has room for a finger, and the open one is in sight.
    expect(row.count).toBe(10)
    expect(row.narrowest).toBeGreaterThanOrEqual(44)
    expect(row.openFrom).toBeGreaterThanOrEqual(0)
    expect(row.openTo).toBeLessThanOrEqual(row.width)
    const wide = await page.evaluate(() => document.documentElement.scrollWidth)
    expect(wide).toBeLessThanOrEqual(390)
    await saveScreenshot(page, 'pour phone')
    await hand.press(page.getByRole('radio', { name: 'Fans' }))
    await settled(page)
    await checkPours(page, pourOf(demoPlan({ air: 'fans' })))
    await page.locator('.heat-lines').scrollIntoViewIfNeeded()
    await saveScreenshot(page, 'pour phone chart')
  },
)

/**
 * Places where two answers differ. Browser and Node are engines of different years whose exponentials differ in the
 * last bit, and an iteration may stop a step apart: figures agree to 1e-6, all else exactly.
 */
function differences(found: unknown, expected: unknown, path = ''): readonly string[] {
  if (typeof found === 'number' && typeof expected === 'number') {
    const isSame = Object.is(found, expected) || Math.abs(found - expected) <= 1e-6 * (1 + Math.abs(expected))
    return isSame ? [] : [`${path}: ${found} for ${expected}`]
  }
  if (typeof found !== 'object' || typeof expected !== 'object' || found === null || expected === null)
    return found === expected ? [] : [`${path}: ${String(found)} for ${String(expected)}`]
  const keys = [...new Set([...Object.keys(found), ...Object.keys(expected)])]
  const at = (value: object, key: string): unknown =>
    Object.entries(value).find(([name]) => name === key)?.[1]
  return keys.flatMap((key) => differences(at(found, key), at(expected, key), `${path}/${key}`))
}

test('the worker answers as the direct call does, and in good time', async () => {
  const server = await deskServer()
  const browser = await chromium.connect(inject('browserEndpoint'))
  try {
    const page = await server.open(await browser.newContext())
    const tasks = [21, 22, 23, 24, 25, 26, 27, 28].map((roomC) =>
      taskOf(demoPlan({ room: { kind: 'steady', roomC } })),
    )
    const answers = await page.evaluate(async (asked) => {
      const client = desk.pourClient()
      const found: { readonly tookMs: number; readonly answer: unknown }[] = []
      for (const task of asked) {
        const startMs = performance.now()
        const answer = await client.answer(task)
        found.push({ tookMs: performance.now() - startMs, answer })
      }
      return found
    }, tasks)
    answers.forEach(({ answer }, index) => {
      const task = tasks[index]
      if (task === undefined) throw new Error('no task')
      expect(differences(answer, answerPour(task))).toEqual([])
    })
    const warm = answers.slice(3).map(({ tookMs }) => Math.round(tookMs))
    console.log(JSON.stringify({ coldMs: Math.round(answers[0]?.tookMs ?? NaN), warmMs: warm }))
    // The figure to reach is 150 ms on a quiet machine; a busy one is given room, but not an order of magnitude.
    expect(Math.min(...warm)).toBeLessThan(600)
  } finally {
    await browser.close()
    await server.close()
  }
})
