import { expect } from 'vitest'
import type { Point } from '../../src/core/geometry'
import { appTest } from '../support/appTest'
import { button, field, marksOf, stage, startWithPhoto } from '../support/bench'
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
    await expect.poll(() => hand.page.getByText('The photo is sharp.').count(), SOON).toBe(1)
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

appTest('states a ± beside lengths, and maps where the photo is weak', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  const { page } = hand
  await page.locator('.stage[aria-current="step"]').waitFor()
  // The demo job: its figures are there at once.
  await expect.poll(() => page.locator('.decide .plus-minus').count(), SOON).toBeGreaterThan(1)
  const verdict = await page.locator('.verdict').innerText()
  expect(verdict).toMatch(/±/)
  await hand.press(stage(hand, /^Edge/))
  await expect.poll(() => page.locator('.figures .plus-minus').count(), SOON).toBe(4)
  await saveScreenshot(page, 'true size plus minus')
  await hand.press(stage(hand, /^Size/))
  await expect.poll(() => page.getByText(/^Most help now: /).count(), SOON).toBe(1)
  const canvas = page.locator('.slab-canvas-host')
  const before = await canvas.screenshot()
  await hand.press(button(hand, 'Where the photo is weak'))
  await expect.poll(async () => (await canvas.screenshot()).equals(before), SOON).toBe(false)
  await expect.poll(() => page.getByText(/^The closer the lines, the less sure/).count(), SOON).toBe(1)
  await saveScreenshot(page, 'true size weak map photo')
  await hand.press(button(hand, 'From above'))
  await page.locator('.slab-canvas[data-view="above"]').waitFor()
  await saveScreenshot(page, 'true size weak map above')
})

appTest('a slab without a photo goes from taped stations to the cut sheet', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  const { page } = hand
  await page.locator('.stage[aria-current="step"]').waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  await hand.press(stage(hand, /^Photo/))
  await hand.press(button(hand, 'No photo: measure by tape'))
  const next = (name: string) => page.getByRole('textbox', { name, exact: true })
  // By hand: a slab 2400 mm long, 900 wide at its ends and 800 in the middle: 2 × 1200 × (900 + 800) / 2 = 2.04 m².
  for (const [along, left, right] of [
    [0, 450, 450],
    [2400, 450, 450],
    [1200, 400, 400],
  ] as const) {
    await hand.type(next('Along'), String(along))
    await hand.type(next('To the left'), String(left))
    await hand.type(next('To the right'), String(right))
    await hand.press(button(hand, 'Add it'))
    await expect.poll(() => next('Along').inputValue()).toBe('')
  }
  await expect.poll(() => page.locator('.figures-total').first().innerText(), SOON).toMatch(/2\.04 m²/)
  await saveScreenshot(page, 'true size stations phone')
  await hand.press(stage(hand, /^Photo/))
  await hand.type(field(hand, 'Thickness as it lies'), '52')
  await hand.press(stage(hand, /^Table/))
  await hand.type(field(hand, 'Length'), '2000')
  await hand.type(field(hand, 'Width'), '760')
  await hand.type(field(hand, 'Thickness'), '45')
  await hand.press(button(hand, 'Lay the table on the slab'))
  await expect.poll(() => page.locator('.verdict').innerText(), SOON).toMatch(/Covers/)
  await saveScreenshot(page, 'true size stations table phone')
  await hand.press(stage(hand, /^Paper/))
  await page.locator('.sheet-preview svg').first().waitFor()
  await saveScreenshot(page, 'true size stations paper phone')
})
