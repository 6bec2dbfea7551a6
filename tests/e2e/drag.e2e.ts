import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, listedObjects } from '../support/bench'
import { mouseHand } from '../support/hand'

/** Sixty frames a second leave so much for each. */
const FRAME_MS = 1000 / 60
/** A machine that builds and tests beside this is as many times slower; the figure is printed as it is. */
const BUSY = 6
const STEPS = 90
const STEP_PX = 1

appTest('the drawing and the figures keep up while the table is dragged', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await hand.press(button(hand, 'Move table'))
  const footprint = (await listedObjects(hand)).find(({ key }) => key.startsWith('footprint'))
  if (footprint === undefined) throw new Error('no table lies on the slab')
  const resin = page.locator('[data-figure="resin"] dd')
  const before = await resin.innerText()
  const { x, y } = footprint.screen
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.evaluate(() => {
    const frames: number[] = []
    let last = performance.now()
    const tick = (now: number): void => {
      frames.push(now - last)
      last = now
      if (Reflect.get(globalThis, 'isDragging') === true) requestAnimationFrame(tick)
    }
    Object.assign(globalThis, { frames, isDragging: true })
    requestAnimationFrame(tick)
  })
  const shown = new Set<string>()
  for (let step = 1; step <= STEPS; step++) {
    await page.mouse.move(x, y + step * STEP_PX)
    if (step % 30 === 0) shown.add(await resin.innerText())
  }
  const frames = await page.evaluate(() => {
    Object.assign(globalThis, { isDragging: false })
    const noted: unknown = Reflect.get(globalThis, 'frames')
    return noted as number[]
  })
  await page.mouse.up()
  const sorted = frames.slice(1).toSorted((a, b) => a - b)
  const medianMs = sorted[sorted.length >> 1] ?? Number.NaN
  console.log(
    JSON.stringify({
      drag: 'library-table',
      frames: sorted.length,
      medianMs,
      p95Ms: sorted[Math.floor(sorted.length * 0.95)],
    }),
  )
  expect(medianMs).toBeLessThan(BUSY * FRAME_MS)
  // The figure changed on the way, not only at the end.
  expect(shown.size).toBeGreaterThan(1)
  expect(await resin.innerText()).not.toBe(before)
})
