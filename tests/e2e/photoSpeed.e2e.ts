import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, stage } from '../support/bench'
import { mouseHand } from '../support/hand'
import { photoJpeg } from '../support/jpegs'
import { markPlaces, placeMarks, tapeReadings, typeTape } from '../support/sizeSteps'
import { readTruth } from '../support/truth'

/** What the design asks of a 12 megapixel photo on a quiet machine. */
const FIRST_VIEW_MS = 1500
const BLOCKED_MS = 50
/** A machine that builds and tests beside this is as many times slower; the figures are printed as they are. */
const BUSY = 6

declare global {
  interface Window {
    longTasksMs: number[]
  }
}

/** Notes every task of the page's thread that lasts longer than 50 ms: for so long no input is answered. */
async function watchLongTasks(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.longTasksMs = []
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) window.longTasksMs.push(Math.round(entry.duration))
    }).observe({ entryTypes: ['longtask'] })
  })
}

const longTasks = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() => {
    const seen = window.longTasksMs
    window.longTasksMs = []
    return seen
  })

/** Waits until the picture's canvas shows many colours: the photo, and not the empty bench. */
async function photoIsSeen(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.slab-canvas canvas')
    const context = canvas?.getContext('2d')
    if (!canvas || !context) return false
    const { data } = context.getImageData(canvas.width >> 2, canvas.height >> 1, canvas.width >> 1, 1)
    const seen = new Set<number>()
    for (let i = 0; i < data.length; i += 4) {
      seen.add(((data[i] ?? 0) << 16) | ((data[i + 1] ?? 0) << 8) | (data[i + 2] ?? 0))
    }
    return seen.size > 40
  })
}

appTest(
  'a 12 megapixel photo is opened, scaled and seen from above without blocking input',
  async ({ desktop }) => {
    const { page } = desktop
    const hand = mouseHand(page)
    const file = join(mkdtempSync(join(tmpdir(), 'photo-')), 'slab.jpg')
    writeFileSync(file, photoJpeg({ photo: 'd2', size: '12 MP' }))
    await page.locator('.stage[aria-current="step"]').waitFor()
    await hand.press(button(hand, /^Menu/))
    await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
    await page.keyboard.press('Escape')
    await photoIsSeen(page)
    const choosing = page.waitForEvent('filechooser')
    await hand.press(button(hand, /my own photo/))
    const chooser = await choosing
    await watchLongTasks(page)
    let startMs = Date.now()
    await chooser.setFiles(file)
    await page.getByText('No answer yet: the photo has no size').first().waitFor()
    await photoIsSeen(page)
    const firstViewMs = Date.now() - startMs
    const whileOpening = await longTasks(page)

    const truth = readTruth('d2')
    const factor = 4000 / truth.photo.width_px
    await placeMarks(
      hand,
      markPlaces(truth).map(([x, y]) => [x * factor, y * factor] as const),
    )
    await longTasks(page)
    await typeTape(hand, tapeReadings(truth))
    await page.getByText('Between its two ends').waitFor()
    const whileScaling = await longTasks(page)

    startMs = Date.now()
    await hand.press(button(hand, 'From above'))
    await page.locator('.slab-canvas[data-view="above"]').waitFor()
    await photoIsSeen(page)
    const aboveMs = Date.now() - startMs
    await hand.press(stage(hand, /^Edge/))
    const whileRectifying = await longTasks(page)

    console.log(
      JSON.stringify({ photo: '12 MP', firstViewMs, aboveMs, whileOpening, whileScaling, whileRectifying }),
    )
    expect(firstViewMs).toBeLessThan(BUSY * FIRST_VIEW_MS)
    for (const ms of [...whileOpening, ...whileScaling, ...whileRectifying]) {
      expect(ms).toBeLessThan(BUSY * BLOCKED_MS)
    }
  },
)
