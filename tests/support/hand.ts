import type { Locator, Page } from 'playwright-core'
import { type PagePoint, touchDrag } from './touch'

/** How a maker acts on the page: with a mouse or with a finger, on buttons, fields and the picture. */
export interface Hand {
  readonly page: Page
  readonly press: (target: Locator) => Promise<void>
  readonly tapAt: (at: PagePoint) => Promise<void>
  readonly drag: (from: PagePoint, to: PagePoint) => Promise<void>
  /** Types into a field and leaves it by Enter. */
  readonly type: (field: Locator, text: string) => Promise<void>
}

const type = async (field: Locator, text: string): Promise<void> => {
  await field.fill(text)
  await field.press('Enter')
}

export const mouseHand = (page: Page): Hand => ({
  page,
  type,
  press: (target) => target.click(),
  tapAt: async ({ x, y }) => page.mouse.click(x, y),
  drag: async (from, to) => {
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(to.x, to.y, { steps: 8 })
    await page.mouse.up()
  },
})

export const fingerHand = (page: Page): Hand => ({
  page,
  type,
  press: (target) => target.tap(),
  tapAt: async ({ x, y }) => page.touchscreen.tap(x, y),
  drag: (from, to) => touchDrag(page, from, to),
})
