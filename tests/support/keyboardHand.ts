import type { Locator, Page } from 'playwright-core'
import type { Hand } from './hand'

/** More than there is to be reached on any page. */
const MOST_TABS = 400

/** What an element stands for on the way by Tab: a row of radios is one stop. */
const isThere = (target: Locator): Promise<boolean> =>
  target.evaluate((element) => {
    const place = element.closest('summary, button, input, textarea, select, [tabindex]') ?? element
    const now = document.activeElement
    if (place === now) return true
    const isRadio = (one: Element | null): one is HTMLInputElement =>
      one instanceof HTMLInputElement && one.type === 'radio'
    return isRadio(place) && isRadio(now) && place.name === now.name
  })

/** Goes on by Tab, from wherever the focus is, until it is at the target. @throws Error when it never gets there */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor({ state: 'attached' })
  for (let tabs = 0; tabs < MOST_TABS; tabs++) {
    if (await isThere(target)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`${target.toString()} cannot be reached by Tab`)
}

async function press(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target)
  const isRadio = await target.evaluate((one) => one instanceof HTMLInputElement && one.type === 'radio')
  if (!isRadio) return page.keyboard.press('Enter')
  for (let arrows = 0; arrows < 12 && !(await target.isChecked()); arrows++) {
    await page.keyboard.press('ArrowRight')
  }
  if (!(await target.isChecked())) await page.keyboard.press('Space')
}

const noPointer = (): Promise<never> => Promise.reject(new Error('a keyboard points at nothing'))

/** A maker without a pointer: Tab, Enter, Space, arrow keys and letters. */
export const keyboardHand = (page: Page): Hand => ({
  page,
  press: (target) => press(page, target),
  tapAt: noPointer,
  drag: noPointer,
  type: async (field, text) => {
    await tabTo(page, field)
    await page.keyboard.press('Control+a')
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
  },
})
