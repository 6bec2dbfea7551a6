import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Point, simplifyRing } from '../../src/core/geometry'
import { appTest } from '../support/appTest'
import { button, field, marksOf, stage, startWithPhoto } from '../support/bench'
import { keyboardHand, tabTo } from '../support/keyboardHand'
import { readTruth } from '../support/truth'
import { checkAgainstTruth, fillWithOffcut, JOBS, layTable, printCutSheet } from '../support/wholeJob'
import { demoPhotoPath, markPlaces, tapeReadings } from '../support/sizeSteps'

/** How finely the edge is followed, photo px. */
const SIMPLIFY_PX = 3

/** The cross goes 100, 10 or 1 photo px at a press. */
const STEPS = [
  { px: 100, held: 'Shift+' },
  { px: 10, held: '' },
  { px: 1, held: 'Alt+' },
] as const

async function goAlong(page: Page, px: number, [less, more]: readonly [string, string]): Promise<void> {
  let left = Math.round(Math.abs(px))
  for (const step of STEPS) {
    for (; left >= step.px; left -= step.px) await page.keyboard.press(`${step.held}${px < 0 ? less : more}`)
  }
}

/** Where the cross is: places are whole presses from where it was. */
class Cross {
  readonly #page: Page
  #at: Point

  constructor(page: Page, at: Point) {
    this.#page = page
    this.#at = at
  }

  async setPointAt([x, y]: Point): Promise<void> {
    const by = [Math.round(x - this.#at[0]), Math.round(y - this.#at[1])] as const
    await goAlong(this.#page, by[0], ['ArrowLeft', 'ArrowRight'])
    await goAlong(this.#page, by[1], ['ArrowUp', 'ArrowDown'])
    await this.#page.keyboard.press('Enter')
    this.#at = [this.#at[0] + by[0], this.#at[1] + by[1]]
  }
}

const toCanvas = (page: Page): Promise<void> => tabTo(page, page.locator('.slab-canvas-host'))

/** The cross goes no further than the photo's edges: from its corner every place is known. */
async function crossFromCorner(page: Page): Promise<Cross> {
  await toCanvas(page)
  for (let n = 0; n < 60; n++) {
    await page.keyboard.press('Shift+ArrowLeft')
    await page.keyboard.press('Shift+ArrowUp')
  }
  return new Cross(page, [0, 0])
}

appTest(
  'the whole job by keyboard alone, its figures true to the slab',
  async ({ desktop }) => {
    const [job] = JOBS
    if (job === undefined) throw new Error('no job')
    const { page } = desktop
    const hand = keyboardHand(page)
    const truth = readTruth(job.photo)
    await startWithPhoto(hand, demoPhotoPath(job.photo))
    await hand.press(stage(hand, /^Photo/))
    await hand.type(field(hand, 'Thickness as it lies'), String(truth.slab.thickness_mm))
    await hand.press(stage(hand, /^Size/))
    await hand.press(button(hand, /^(Place a mark|Mark)$/))
    const cross = await crossFromCorner(page)
    for (const [n, px] of markPlaces(truth).entries()) {
      await cross.setPointAt([px[0], px[1]])
      await expect.poll(async () => (await marksOf(hand)).length).toBe(n + 1)
    }
    for (const [names, lengthMm] of tapeReadings(truth)) {
      await hand.type(field(hand, `Taped distance ${names}`), String(lengthMm))
    }
    await hand.press(stage(hand, /^Edge/))
    await hand.press(button(hand, /^Outline$/))
    const pen = await crossFromCorner(page)
    const taps = simplifyRing(truth.slab.top_outline_px, SIMPLIFY_PX)
    for (const px of taps) await pen.setPointAt([px[0], px[1]])
    await hand.press(button(hand, 'Close it'))
    await checkAgainstTruth(hand, truth, taps)
    await layTable(hand, job)
    await fillWithOffcut(hand)
    await printCutSheet(hand, 'job keyboard cut sheet')
  },
  600_000,
)
