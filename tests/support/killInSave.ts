import type { BrowserContext, Page } from 'playwright-core'
import type { Desk } from '../workers/desk'
import type { DeskServer } from './deskServer'
import type { SeededRandom } from './seededRandom'

declare const desk: Desk

async function started(server: DeskServer, context: BrowserContext): Promise<Page> {
  const page = await server.open(context)
  await page.evaluate(() => desk.hydrate())
  return page
}

const BEGUN = 'the save has begun'
const DONE = 'the save is done'

async function expectBegun(said: readonly string[]): Promise<void> {
  while (!said.includes(BEGUN)) {
    await new Promise((resolve) => {
      setImmediate(resolve)
    })
  }
}

/**
 * Starts a save and ends the page's process after some milliseconds, without a word: no pagehide, no last save.
 * @returns how far the save had come, by what the page said before it went
 */
async function killWhileSaving(page: Page, text: string, afterMs: number): Promise<'within' | 'late'> {
  const said: string[] = []
  page.on('console', (message) => said.push(message.text()))
  // A session takes a while to begin: it is there before the save is.
  const session = await page.context().newCDPSession(page)
  const gone = page.waitForEvent('crash')
  await page.evaluate(
    ([name, begun, done]) => {
      setTimeout(() => {
        desk.run(desk.renamePlan, { name })
        desk.run(desk.setPlanNote, { note: name })
        console.log(begun)
        void desk.flush().then(() => console.log(done))
      }, 10)
    },
    [text, BEGUN, DONE] as const,
  )
  await expectBegun(said)
  await new Promise((resolve) => {
    setTimeout(resolve, afterMs)
  })
  session.send('Page.crash').catch(() => undefined)
  await gone
  await page.close()
  return said.includes(DONE) ? 'late' : 'within'
}

interface Bench {
  readonly name: string
  /** The note is written by the same save as the name: a half-written plan would hold one without the other. */
  readonly note: string
  readonly photoBytes: number
  readonly lost: number
}

const benchOf = (page: Page): Promise<Bench> =>
  page.evaluate(async () => {
    const { plan } = desk.planStore.getState()
    const capture = plan.slabs[0]?.capture
    const hash = capture?.kind === 'photo' ? capture.photos[0]?.hash : undefined
    return {
      name: plan.name,
      note: plan.note,
      photoBytes: (await desk.getPhotoBytes(hash ?? ''))?.size ?? 0,
      lost: desk.sessionStore.getState().lost.length,
    }
  })

export interface KillFigures {
  readonly kills: number
  /** Of these, after a save had begun and before it was done. */
  readonly killsWithin: number
  /** What the next page found: the plan before the save that was cut short, or the one after it. */
  readonly foundBefore: number
  readonly foundAfter: number
}

/** A save takes some milliseconds, and so does the way of the kill. */
const WITHIN_MS = 4

/**
 * Kills a page again and again while it saves, and looks each time what the next page finds.
 * @throws Error when that is neither the plan before nor the plan after the save, or a photo is gone
 */
export async function killInSaves(
  server: DeskServer,
  context: BrowserContext,
  kills: number,
  random: SeededRandom,
): Promise<KillFigures> {
  let [killsWithin, foundBefore, foundAfter] = [0, 0, 0]
  let page = await started(server, context)
  const text = (n: number): string => `save ${n} ${'x'.repeat(random.integer(0, 150))}`
  await page.evaluate(async (first) => {
    desk.run(desk.renamePlan, { name: first })
    desk.run(desk.setPlanNote, { note: first })
    await desk.flush()
  }, text(0))
  let kept = await benchOf(page)
  for (let n = 1; n <= kills; n++) {
    const next = text(n)
    const moment = await killWhileSaving(page, next, random.between(0, WITHIN_MS))
    if (moment === 'within') killsWithin++
    page = await started(server, context)
    const found = await benchOf(page)
    const isBefore = found.name === kept.name && found.note === kept.note
    const isAfter = found.name === next && found.note === next
    if (!(isBefore || isAfter)) throw new Error(`kill ${n}: found ${JSON.stringify(found)}`)
    if (found.photoBytes !== kept.photoBytes || found.lost > 0)
      throw new Error(`kill ${n}: something is lost`)
    if (isAfter) foundAfter++
    else foundBefore++
    kept = found
  }
  await page.close()
  return { kills, killsWithin, foundBefore, foundAfter }
}
