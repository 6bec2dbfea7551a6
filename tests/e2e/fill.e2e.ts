import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, field, stage } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, type Hand, mouseHand } from '../support/hand'
import { printToPdf, readPdf } from '../support/pdf'

const SEARCH_MS = 90_000

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

/** Turns to the cuts of the demo job, in millimetres, with no offcut laid: this slab does not cover by itself. */
async function openCutsWithoutOffcuts(hand: Hand): Promise<void> {
  const { page } = hand
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  await hand.press(stage(hand, /^Cuts/))
  await hand.press(button(hand, /^Take out/))
  await page.getByRole('button', { name: /^Take out/ }).waitFor({ state: 'detached' })
}

/** What is to be mixed, in litres, as the panel says it. */
async function litresToMix({ page }: Hand): Promise<number> {
  const text = plain(await page.getByRole('region', { name: 'Resin', exact: true }).innerText())
  const [, litres] = /To mix, with loss\s+([\d.]+) L/.exec(text) ?? []
  if (litres === undefined) throw new Error(`no litres in: ${text}`)
  return Number(litres)
}

const part = ({ page }: Hand) => page.getByRole('region', { name: 'Offcuts for the gaps' })

async function search(hand: Hand): Promise<void> {
  await hand.press(button(hand, 'Find offcuts for the gaps'))
  await button(hand, 'Keep this one').waitFor({ timeout: SEARCH_MS })
}

appTest(
  'offcuts that the search finds save a third of the resin, one is moved by a typed place, and all is printed',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const { page } = hand
    await openCutsWithoutOffcuts(hand)
    const without = await litresToMix(hand)
    await search(hand)
    await part(hand).getByRole('progressbar').waitFor({ state: 'detached', timeout: SEARCH_MS })
    const promised = Number(
      /Resin saved\s+([\d.]+) L/.exec(plain(await part(hand).innerText()))?.[1] ?? Number.NaN,
    )
    await saveScreenshot(page, 'fill desktop proposal')
    await hand.press(button(hand, 'Keep this one'))
    await page
      .getByRole('button', { name: /^Take out/ })
      .first()
      .waitFor()
    const filled = await litresToMix(hand)
    expect(filled).toBeLessThan((2 / 3) * without)
    // What was promised is what the gaps lose; the mix adds its share for loss.
    expect(without - filled).toBeGreaterThan(0.95 * promised)
    expect(without - filled).toBeLessThan(1.3 * promised)

    const place = field(hand, 'Middle, along')
    const before = Number.parseFloat(plain(await place.inputValue()).replaceAll(/[ ,]/g, ''))
    await hand.type(place, String(before - 1))
    await expect
      .poll(async () => Number.parseFloat(plain(await place.inputValue()).replaceAll(/[ ,]/g, '')))
      .toBeCloseTo(before - 1, 0)
    await hand.press(button(hand, /^Undo/))
    await hand.press(button(hand, /^Undo/))
    await expect.poll(() => litresToMix(hand)).toBe(without)
    await hand.press(button(hand, /^Redo/))
    await expect.poll(() => litresToMix(hand)).toBe(filled)

    await hand.press(stage(hand, /^Paper/))
    await page.locator('.sheet-preview svg').first().waitFor()
    const words = (await readPdf(await printToPdf(page))).flatMap(({ texts }) =>
      texts.map(({ text }) => text),
    )
    expect(words.some((word) => /\bF1\b/.test(word))).toBe(true)
  },
)

appTest('a search is stopped by a finger, and what it has found can be kept', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  await openCutsWithoutOffcuts(hand)
  const without = await litresToMix(hand)
  await search(hand)
  await hand.press(button(hand, 'Stop here'))
  await part(hand).getByText('Stopped. What was found so far is kept below.').waitFor()
  await hand.press(part(hand).getByRole('radio', { name: /None turned over/ }))
  await saveScreenshot(phone.page, 'fill phone stopped')
  await hand.press(button(hand, 'Keep this one'))
  await expect.poll(() => litresToMix(hand)).toBeLessThan(without)
})
