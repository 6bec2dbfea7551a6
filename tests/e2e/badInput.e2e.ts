import { readFileSync } from 'node:fs'
import { strToU8, zipSync } from 'fflate'
import { expect } from 'vitest'
import { appTest } from '../support/appTest'
import { button, field, listedObjects, stage } from '../support/bench'
import { type Hand, mouseHand } from '../support/hand'
import { emptyFile, photoJpeg, textNamedJpg, truncatedJpeg } from '../support/jpegs'

interface ChosenFile {
  readonly name: string
  readonly bytes: Uint8Array
  readonly says: RegExp
}

const planFile = (json: unknown): Uint8Array => zipSync({ 'plan.json': strToU8(JSON.stringify(json)) })

const demoPlan = (): Record<string, unknown> =>
  JSON.parse(
    readFileSync(new URL('../../demo-data/library-table/plan.json', import.meta.url), 'utf8'),
  ) as Record<string, unknown>

const REFUSED: readonly ChosenFile[] = [
  { name: 'empty.jpg', bytes: emptyFile(), says: /This file is empty/ },
  { name: 'letter.jpg', bytes: textNamedJpg(), says: /neither a photo nor a saved job/ },
  { name: 'cut-off.jpg', bytes: truncatedJpeg(), says: /breaks off before its end|may be damaged/ },
  {
    name: 'newer.waneline',
    bytes: planFile({ ...demoPlan(), version: 99 }),
    says: /newer/,
  },
  {
    name: 'nonsense.waneline',
    bytes: planFile({ cabbage: [1, 2] }),
    says: /neither a photo nor a saved job/,
  },
]

async function choose(hand: Hand, { name, bytes }: Omit<ChosenFile, 'says'>): Promise<void> {
  const choosing = hand.page.waitForEvent('filechooser')
  await hand.press(button(hand, /^Menu/))
  await hand.press(hand.page.getByText('Open a photo or a saved job').first())
  await (await choosing).setFiles({ name, mimeType: '', buffer: Buffer.from(bytes) })
}

const opened = async (hand: Hand): Promise<void> => {
  await hand.page.locator('.stage[aria-current="step"]').waitFor()
  await hand.page
    .getByText(/Covered with resin|Covers/)
    .first()
    .waitFor()
}

const planName = (hand: Hand) => hand.page.getByRole('textbox', { name: 'Name of this job' }).inputValue()

appTest(
  'files that cannot be opened get their sentence, and the job stays as it was',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    await opened(hand)
    const name = await planName(hand)
    for (const file of REFUSED) {
      await choose(hand, file)
      await hand.page.getByText(file.says).first().waitFor()
      expect(await planName(hand)).toBe(name)
      await hand.page
        .getByText(/Covered with resin|Covers/)
        .first()
        .waitFor()
      await hand.page.keyboard.press('Escape')
      const close = hand.page.getByRole('button', { name: /^Close/ })
      if ((await close.count()) > 0) await close.first().click()
    }
  },
)

appTest('a photo of 60 megapixels is refused, and a smaller copy offered', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await opened(hand)
  await choose(hand, { name: 'huge.jpg', bytes: photoJpeg({ photo: 'd2', size: '60 MP' }) })
  await hand.page.getByText(/60 megapixels/).waitFor()
  await hand.press(button(hand, 'Use a smaller copy'))
  await hand.page.getByText('No answer yet: the photo has no size').first().waitFor({ timeout: 60_000 })
})

appTest(
  'a length that is none keeps what was typed and says why; absurd sizes are refused',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    await opened(hand)
    await hand.press(stage(hand, /^Table/))
    const length = field(hand, 'Length')
    const before = await length.inputValue()
    for (const [text, says] of [
      ['two metres', /is not a length the program can read/],
      ['-500 mm', /less than nothing|too small/],
      ['90 m', /too large/],
      ['1,200', /two ways/],
    ] as const) {
      await hand.type(length, text)
      expect(await length.inputValue()).toBe(text)
      await hand.page.getByText(says).first().waitFor()
      expect(await length.getAttribute('aria-invalid')).toBe('true')
    }
    await length.press('Escape')
    await expect.poll(() => length.inputValue()).toBe(before)
  },
)

appTest('an outline dragged across itself is named, and undo mends it', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await opened(hand)
  await hand.press(stage(hand, /^Edge/))
  await hand.press(button(hand, 'Change points'))
  const points = (await listedObjects(hand)).filter(({ key }) => /^trace\/.*/.test(key))
  expect(points.length).toBeGreaterThan(0)
  // The outline's first and middle points, by the list of its points.
  await hand.press(hand.page.getByText(/^Points: \d+$/).first())
  const along = hand.page.getByRole('textbox', { name: 'Along the datum' })
  await hand.press(hand.page.locator('.more .object-list button').nth(3))
  await hand.type(along, '1500 mm')
  await hand.page
    .getByText(/crosses itself between points/)
    .first()
    .waitFor()
  await hand.press(button(hand, /^Undo/))
  await hand.page
    .getByText(/crosses itself between points/)
    .first()
    .waitFor({ state: 'detached' })
  await hand.page
    .getByText(/Covered with resin|Covers/)
    .first()
    .waitFor()
})
