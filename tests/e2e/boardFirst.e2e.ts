import { fileURLToPath } from 'node:url'
import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, field, stage, startWithPhoto } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, mouseHand } from '../support/hand'

const D4 = fileURLToPath(new URL('../photos/d4.jpg', import.meta.url))

appTest(
  'a board is typed before it is tapped, and nothing says done on a size nobody typed',
  async ({ phone }) => {
    const hand = fingerHand(phone.page)
    const { page } = hand
    await startWithPhoto(hand, D4)
    await hand.press(stage(hand, /^Size/))
    await hand.press(page.getByRole('radio', { name: 'A board lying on the slab' }))
    const corners = button(hand, 'Tap its four corners')
    expect(await corners.isDisabled()).toBe(true)
    expect(await field(hand, 'Length').inputValue()).toBe('')
    await hand.type(field(hand, 'Length'), '1200')
    await hand.type(field(hand, 'Width'), '600')
    expect(await corners.isDisabled()).toBe(true)
    await hand.type(field(hand, 'Thickness'), '6')
    await hand.press(corners)
    const canvas = await page.locator('.slab-canvas-host').boundingBox()
    if (canvas === null) throw new Error('no canvas')
    for (const [x, y] of [
      [0.3, 0.45],
      [0.6, 0.4],
      [0.66, 0.52],
      [0.32, 0.6],
    ] as const) {
      await hand.tapAt({ x: canvas.x + canvas.width * x, y: canvas.y + canvas.height * y })
    }
    await page.getByText('Board 1').first().waitFor()
    // The tool is laid down: its hint would ask for a fifth corner.
    await expect.poll(() => page.getByText(/tap corner/).count()).toBe(0)
    await page.getByText(/The size hangs on the board alone/).waitFor()
    await page.getByRole('heading', { name: 'Tape one long distance to check' }).waitFor()
    await hand.press(button(hand, 'From above'))
    await saveScreenshot(page, 'board laid by touch')
  },
)

appTest('a photo opens at its slab, whose thickness nobody has typed yet', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await startWithPhoto(hand, D4)
  expect(await stage(hand, /^Photo/).getAttribute('data-mark')).toBe('needs')
  const thickness = field(hand, 'Thickness as it lies')
  expect(await thickness.inputValue()).toBe('')
  await hand.page.getByText(/thickness is not known/).waitFor()
  await hand.type(thickness, '50')
  await expect.poll(() => stage(hand, /^Photo/).getAttribute('data-mark')).toBe('done')
  await hand.press(button(hand, 'Go on to its size'))
  expect(await stage(hand, /^Size/).getAttribute('aria-current')).toBe('step')
})
