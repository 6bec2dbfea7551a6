import { fileURLToPath } from 'node:url'
import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, field, stage } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, type Hand, mouseHand } from '../support/hand'

const SEARCH_MS = 60_000
const D4 = fileURLToPath(new URL('../photos/d4.jpg', import.meta.url))

/** Turns to the six slabs of the demo job in millimetres, and waits until all of them have answered. */
async function compareSlabs(hand: Hand): Promise<void> {
  const { page } = hand
  await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  await hand.press(stage(hand, /^Slabs/))
  await page.locator('.slabs-best').waitFor({ timeout: SEARCH_MS })
  await expect.poll(() => page.locator('.search-line').count(), { timeout: SEARCH_MS }).toBe(0)
}

const answers = async ({ page }: Hand): Promise<readonly (readonly [string | null, string | null])[]> =>
  Promise.all(
    (await page.locator('.slab-card').all()).map(
      async (card) => [await card.getAttribute('data-slab'), await card.getAttribute('data-mark')] as const,
    ),
  )

appTest('six slabs stand side by side, and it is plain which to buy and why', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await compareSlabs(hand)
  const { page } = hand
  const best = (await page.locator('.slabs-best').innerText()).replaceAll('\u00a0', ' ')
  expect(best).toMatch(/^Buy Oak slab W-21\s+Covers, with .* to spare at the tightest (side|corner)/)
  expect(best).toMatch(
    /Ash slab W-14 \(.*\) needs resin in 8 % of the top; Walnut slab W-5 .* is too wet to pour/,
  )
  // Oak is wide and dry, walnut too wet, the ash short at its edges, maple only taped, beech and elm too thin.
  expect(await answers(hand)).toEqual([
    ['oak', 'done'],
    ['walnut', 'doubtful'],
    ['slab', 'doubtful'],
    ['maple', 'doubtful'],
    ['beech', 'stop'],
    ['elm', 'stop'],
  ])
  await page.locator('.slabs-order select').selectOption({ label: 'cost of material' })
  expect((await answers(hand))[0]).toEqual(['beech', 'stop'])
  // The ash alone has gaps to pour: its days come from the worker of the pour.
  await expect
    .poll(() => page.locator('[data-slab="slab"]').innerText(), { timeout: SEARCH_MS })
    .toMatch(/First pour to flattening\s+\d+ days/)
  expect(await page.locator('[data-slab="oak"]').innerText()).toContain('nothing to pour')
  await saveScreenshot(page, 'slabs desktop')
})

appTest('a rejected slab keeps its reason and is recommended no more', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await compareSlabs(hand)
  const oak = hand.page.locator('[data-slab="oak"]')
  await hand.press(oak.getByRole('button', { name: 'Reject' }))
  await hand.type(oak.getByRole('textbox', { name: 'Why not this one?' }), 'Sold this morning')
  await expect.poll(() => oak.innerText()).toContain('Rejected: Sold this morning')
  await expect.poll(() => hand.page.locator('.slabs-best').innerText()).not.toContain('Oak')
  expect((await answers(hand)).at(-1)).toEqual(['oak', 'stop'])
})

appTest('a slab is taken in by tape on big keys with one finger', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  await compareSlabs(hand)
  const { page } = hand
  await hand.press(button(hand, 'By tape, in the yard'))
  for (const digits of ['2400', '950', '1020', '65', '9', '300']) {
    for (const digit of digits)
      await hand.press(page.locator('.big-keys').getByRole('button', { name: digit, exact: true }))
    if (digits !== '300') await hand.press(button(hand, 'Next'))
  }
  await hand.press(button(hand, 'Keep this slab'))
  const card = page.locator('.slab-card', { hasText: 'Slab 7' })
  await expect.poll(() => card.getAttribute('data-mark')).toBe('done')
  expect((await card.innerText()).replaceAll('\u00a0', ' ')).toContain('25 mm to spare on each side')
  await saveScreenshot(page, 'slabs phone')
})

appTest('a slab by photo comes with the maker’s own board in hand', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  await compareSlabs(hand)
  const { page } = hand
  await page.evaluate(() => {
    const kept: unknown = JSON.parse(localStorage.getItem('waneline-preferences') ?? '{}')
    const ownBoards = [{ lengthMm: 600, widthMm: 400, thicknessMm: 18 }]
    localStorage.setItem('waneline-preferences', JSON.stringify(Object.assign({}, kept, { ownBoards })))
  })
  await page.reload()
  await hand.press(stage(hand, /^Slabs/))
  const choosing = page.waitForEvent('filechooser')
  await hand.press(button(hand, /By photo with my 600/))
  await (await choosing).setFiles(D4)
  await page.locator('.stage[aria-current="step"]', { hasText: 'Size' }).waitFor()
  await page.locator('.slab-canvas[data-view="photo"]').waitFor()
  await page
    .getByText(/Board 600.*: tap corner 1 of 4/)
    .first()
    .waitFor()
})

appTest(
  'the table is brought back to the best place in one step, and takes a size off the curve',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const { page } = hand
    await page.locator('.stage[aria-current="step"]', { hasText: 'Table' }).waitFor()
    await hand.press(button(hand, /^Menu/))
    await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
    await page.keyboard.press('Escape')
    await hand.type(field(hand, 'Off datum (+ right)'), '-300')
    await hand.press(button(hand, 'Find the best place'))
    await page.getByText(/costs .* of wood against the best place/).waitFor({ timeout: SEARCH_MS })
    await hand.press(button(hand, 'Bring it to the best place'))
    await page.getByText('The table lies at the best place.').waitFor()
    await page.keyboard.press('Control+z')
    await page.getByText(/costs .* of wood against the best place/).waitFor()

    await hand.press(button(hand, 'Show length against width'))
    const curve = page.getByRole('slider', { name: 'Size on the curve' })
    await curve.waitFor({ timeout: SEARCH_MS })
    await expect.poll(() => page.locator('.search-line').count(), { timeout: SEARCH_MS }).toBe(0)
    await curve.focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    const [, length = ''] =
      /^([\d ,]+) mm/.exec((await curve.getAttribute('aria-valuetext'))?.replaceAll('\u00a0', ' ') ?? '') ??
      []
    expect(length).not.toBe('')
    await hand.press(button(hand, 'Take this size'))
    await expect
      .poll(async () => (await field(hand, 'Length').first().inputValue()).replaceAll('\u00a0', ' '))
      .toContain(length)
  },
)
