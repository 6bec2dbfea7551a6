import { expect } from 'vitest'
import type { Point } from '../../src/core/geometry'
import { appTest } from '../support/appTest'
import { button, marksOf, stage, startWithPhoto } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, mouseHand, type Hand } from '../support/hand'
import { demoPhotoPath, markPlaces, placeMarks, tapeReadings, typeTape } from '../support/sizeSteps'
import { readTruth } from '../support/truth'

/** Off by this much in a direction that turns from mark to mark: a thumb's error, photo px. */
const OFF_PX = 3

const offBy = (places: readonly Point[], px: number): readonly Point[] =>
  places.map(([x, y], n) => [x + px * Math.cos(0.7 + 1.9 * n), y + px * Math.sin(0.7 + 1.9 * n)] as const)

/** How far each mark stands from its true place, photo px. */
async function errorsPx(hand: Hand, places: readonly Point[]): Promise<readonly number[]> {
  const marks = await marksOf(hand)
  return places.map(([x, y], n) => {
    const [mx, my] = marks[n]?.photo ?? [Number.NaN, Number.NaN]
    return Math.hypot(mx - x, my - y)
  })
}

/** The photo worker takes its time on a busy machine. */
const SOON = { timeout: 20_000 }

const worst = (values: readonly number[]): number => Math.max(...values)

appTest(
  'clicks that are 3 px off are moved onto the marks, each as part of its own undo step',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const places = markPlaces(readTruth('d2'))
    await startWithPhoto(hand, demoPhotoPath('d2'))
    await placeMarks(hand, offBy(places, OFF_PX))
    await expect.poll(async () => worst(await errorsPx(hand, places)), SOON).toBeLessThan(0.5)
    await expect.poll(() => hand.page.getByText('Refined: on its middle in the photo').count(), SOON).toBe(4)
    await saveScreenshot(hand.page, 'true size refined', true)

    // The maker may want the click itself.
    await hand.press(button(hand, 'Leave the click C'))
    await expect.poll(async () => (await errorsPx(hand, places))[2], SOON).toBeGreaterThan(2)
    await hand.press(button(hand, 'Leave the click C'))
    await expect.poll(async () => (await errorsPx(hand, places))[2], SOON).toBeLessThan(0.5)

    // Placed, dragged, placed, dragged, two taps, the switch twice: eight steps, and no more for what was refined.
    const undo = button(hand, /^Undo/)
    let steps = 0
    while ((await marksOf(hand)).length > 0) {
      const before = (await marksOf(hand)).length
      await hand.press(undo)
      steps += 1
      expect(steps).toBeLessThan(10)
      await expect.poll(async () => (await marksOf(hand)).length).toBeLessThanOrEqual(before)
    }
    expect(steps).toBe(8)
  },
)

appTest('a mark set on bare wood is left where it was set, and said to be doubtful', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  await startWithPhoto(hand, demoPhotoPath('d2'))
  await hand.press(stage(hand, /^Size/))
  const canvas = await hand.page.locator('.slab-canvas-host').boundingBox()
  if (canvas === null) throw new Error('no canvas')
  await hand.press(button(hand, /^(Place a mark|Mark)$/))
  await hand.tapAt({ x: canvas.x + canvas.width * 0.5, y: canvas.y + canvas.height * 0.5 })
  await expect
    .poll(() => hand.page.getByText('Left as clicked: not sure what was meant').count(), SOON)
    .toBe(1)
  await saveScreenshot(hand.page, 'true size unsure phone')
})

appTest('a tape misread by 25 mm is named on the screen', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  const truth = readTruth('d4')
  await startWithPhoto(hand, demoPhotoPath('d4'))
  await placeMarks(hand, offBy(markPlaces(truth), OFF_PX))
  const [, second, ...others] = tapeReadings(truth)
  const [first] = tapeReadings(truth)
  if (!first || !second) throw new Error('two distances are needed')
  await typeTape(hand, [first, [second[0], second[1] + 25], ...others])
  const row = hand.page.locator('tr[data-wrong]').filter({ hasText: second[0] })
  await expect.poll(() => row.count(), SOON).toBe(1)
  await saveScreenshot(hand.page, 'true size misread', true)
  // Put right, nothing is wrong any more.
  await typeTape(hand, [second])
  await expect.poll(() => hand.page.locator('tr[data-wrong]').count()).toBe(0)
})
