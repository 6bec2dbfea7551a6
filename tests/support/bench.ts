import type { Locator } from 'playwright-core'
import type { Point } from '../../src/core/geometry'
import type { Hand } from './hand'
import type { PagePoint } from './touch'

/** What a maker sees of the workbench: stages, fields, the list of all that is on the slab. Only words and places. */

export const stage = ({ page }: Hand, name: RegExp): Locator =>
  page.getByRole('navigation').getByRole('button', { name })

export const field = ({ page }: Hand, name: string | RegExp): Locator =>
  page.getByRole('textbox', { name }).first()

export const button = ({ page }: Hand, name: string | RegExp): Locator =>
  page.getByRole('button', { name }).first()

/** Starts a job of one's own with a photo, in millimetres, and waits until the picture has it. */
export async function startWithPhoto(hand: Hand, path: string): Promise<void> {
  const { page } = hand
  await page.locator('.stage[aria-current="step"]').waitFor()
  await hand.press(button(hand, /^Menu/))
  await hand.press(page.getByRole('radio', { name: 'Millimetres' }))
  await page.keyboard.press('Escape')
  const choosing = page.waitForEvent('filechooser')
  await hand.press(button(hand, /my own photo/))
  await (await choosing).setFiles(path)
  await page.locator('.slab-canvas[data-view="photo"]').waitFor()
  await page.getByText('No answer yet: the photo has no size').first().waitFor()
}

interface ListedObject {
  readonly key: string
  readonly screen: PagePoint
  readonly photo: Point | null
}

/** The list of all that is on the slab, with the places of its handles on the screen and in the photo. */
export async function listedObjects({ page }: Hand): Promise<readonly ListedObject[]> {
  return page.locator('.objects').evaluate((list) =>
    [...list.querySelectorAll<HTMLElement>('[data-object]')].flatMap((item) => {
      const { object, screenX, screenY, photoX, photoY } = item.dataset
      if (object === undefined || screenX === undefined || screenY === undefined) return []
      const photo = photoX === undefined || photoY === undefined ? null : ([+photoX, +photoY] as const)
      return [{ key: object, screen: { x: +screenX, y: +screenY }, photo }]
    }),
  )
}

export const marksOf = async (hand: Hand): Promise<readonly ListedObject[]> =>
  (await listedObjects(hand)).filter(({ key }) => key.startsWith('mark/'))

/**
 * Where photo pixels lie on the screen, worked out from two marks that are seen in both.
 * The photo is never turned on the screen, so one scale and one shift say it all.
 */
export async function screenFromPhoto(hand: Hand): Promise<(px: readonly [number, number]) => PagePoint> {
  const [a, b] = await marksOf(hand)
  if (!a?.photo || !b?.photo) throw new Error('two marks are needed')
  const scale =
    Math.hypot(a.screen.x - b.screen.x, a.screen.y - b.screen.y) /
    Math.hypot(a.photo[0] - b.photo[0], a.photo[1] - b.photo[1])
  const [ax, ay] = a.photo
  return ([x, y]) => ({ x: a.screen.x + (x - ax) * scale, y: a.screen.y + (y - ay) * scale })
}

/** The places of a trace's points as its list on the page tells them: along and off the datum, mm. */
export async function listedPoints({ page }: Hand): Promise<readonly Point[]> {
  const texts = await page.locator('.more .object-where').allInnerTexts()
  return texts.map((text) => {
    const [along, off] = text.split(',').map((part) => Number(part.replace('−', '-').replace(/[^\d.-]/g, '')))
    return [along ?? Number.NaN, off ?? Number.NaN] as const
  })
}
