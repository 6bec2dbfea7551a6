import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Device, openApp, saveScreenshot } from '../support/browser'
import { handOf, makeBright, throughAllLooks } from '../support/looks'

// WCAG 2.2 AA by axe on everything that can be on the screen, targets for fingers by measuring them.

/** Some fifty audits of a second or two each. */
const LONG_MS = 600_000

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

async function violationsOn(page: Page, look: string): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).withTags(RULES)
  // Behind the open menu nothing can be pressed; half covered, its buttons would count as too small.
  const { violations, passes } = await (look === 'menu' ? axe.include('.header') : axe).analyze()
  // An audit of nothing passes, too.
  expect(passes.length).toBeGreaterThan(10)
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ target, failureSummary }) => `${look}: ${id} at ${target.join(' ')}: ${failureSummary ?? ''}`,
    ),
  )
}

const LOOKS: readonly { readonly device: Device; readonly bright: boolean }[] = [
  { device: 'desktop', bright: false },
  { device: 'desktop', bright: true },
  { device: 'phone', bright: false },
  { device: 'phone', bright: true },
]

test.each(LOOKS)(
  'axe finds nothing on any stage, menu or dialog: $device, bright $bright',
  async ({ device, bright }) => {
    const app = await openApp({ device })
    if (bright) await makeBright(handOf(device, app.page))
    const found: string[] = []
    await throughAllLooks(app, device, async (look) => {
      found.push(...(await violationsOn(app.page, look)))
    })
    await app.close()
    expect(found).toEqual([])
  },
  LONG_MS,
)

test('axe does find what is wrong', async () => {
  const app = await openApp()
  await app.page.locator('.stage[aria-current="step"]').waitFor()
  await app.page.evaluate(() => {
    const field = document.createElement('input')
    document.querySelector('.panel, main')?.append(field)
  })
  expect((await violationsOn(app.page, 'sabotage')).join()).toContain('label')
  await app.close()
})

const LEAST_PX = 44

/** Buttons, fields and the like that are smaller than a fingertip; a hidden radio counts by the label round it. */
const smallTargets = (page: Page, leastPx: number): Promise<readonly string[]> =>
  page.evaluate((least) => {
    const isSmall = ({ width, height }: DOMRect): boolean => width < least - 0.5 || height < least - 0.5
    const targets = document.querySelectorAll<HTMLElement>(
      'button, input, select, textarea, summary, a[href], [role=radio], [role=checkbox], [role=slider]',
    )
    return [...targets].flatMap((element) => {
      const place = element.matches('input[type=radio], input[type=checkbox]')
        ? (element.closest('label') ?? element)
        : element
      const box = place.getBoundingClientRect()
      const isShown =
        place.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && box.width > 1
      if (!isShown || !isSmall(box)) return []
      const name = element.getAttribute('aria-label') ?? place.textContent?.trim().slice(0, 40) ?? ''
      return [
        `${element.tagName} ${element.className} "${name}" ${box.width.toFixed(0)}×${box.height.toFixed(0)}`,
      ]
    })
  }, leastPx)

test('on a phone every target is at least 44 px wide and high', async () => {
  const app = await openApp({ device: 'phone' })
  const small: string[] = []
  let hasMeasured = false
  await throughAllLooks(app, 'phone', async (look) => {
    small.push(...(await smallTargets(app.page, LEAST_PX)).map((target) => `${look}: ${target}`))
    hasMeasured ||= (await smallTargets(app.page, 10_000)).length > 10
  })
  await app.close()
  expect(hasMeasured).toBe(true)
  expect(small).toEqual([])
})

test.each(['desktop', 'phone'] as const)(
  'text at twice its size: everything is still there and nothing runs out of the page on a %s',
  async (device) => {
    const app = await openApp({ device })
    const { page } = app
    await page.locator('.stage[aria-current="step"]').waitFor()
    await page.evaluate(() => (document.documentElement.style.fontSize = '200%'))
    const off: string[] = []
    await throughAllLooks(app, device, async (look) => {
      const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
      if (wider > 1) off.push(`${look}: ${wider} px wider than the window`)
      if (look.startsWith('stage Table')) await saveScreenshot(page, `text at 200 ${device}`)
    })
    await app.close()
    expect(off).toEqual([])
  },
)

test('nothing moves by itself for who asked for less motion', async () => {
  const app = await openApp({ context: { reducedMotion: 'reduce' } })
  const moving: string[] = []
  await throughAllLooks(app, 'desktop', async (look) => {
    const names = await app.page.evaluate(() =>
      document
        .getAnimations()
        .filter(({ effect }) => Number(effect?.getComputedTiming().duration ?? 0) > 10)
        .map((animation) => animation.constructor.name),
    )
    moving.push(...names.map((name) => `${look}: ${name}`))
  })
  await app.close()
  expect(moving).toEqual([])
})
