import { strFromU8, unzipSync } from 'fflate'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import * as z from 'zod/mini'
import { type Point, pointToRingDistanceMm, ringAreaMm2 } from '../../src/core/geometry'
import { appTest } from '../support/appTest'
import { button, field, listedObjects, screenFromPhoto, stage, startWithPhoto } from '../support/bench'
import { saveScreenshot } from '../support/browser'
import { fingerHand, type Hand, mouseHand } from '../support/hand'
import { photoJpeg } from '../support/jpegs'
import { markPlaces, placeMarks } from '../support/sizeSteps'
import { readTruth } from '../support/truth'

/** From the pointer's move to the line, at a quiet machine; ours is shared, and the figure is printed as it is. */
const LATENCY_MS = 16
const BUSY = 20

const truth = readTruth('d2')
const outline = truth.slab.top_outline_px

/** As much of a saved job as is looked at here. */
const savedJob = z.object({
  slabs: z.array(
    z.object({
      capture: z.object({
        // A slab measured by tape has none.
        traces: z.optional(
          z.array(
            z.object({
              meaning: z.object({ kind: z.string() }),
              ringPx: z.array(z.tuple([z.number(), z.number()])),
            }),
          ),
        ),
      }),
    }),
  ),
})

/** The outline as the saved job has it. */
async function outlineOf(hand: Hand): Promise<readonly Point[]> {
  const { page } = hand
  await hand.press(button(hand, /^Menu/))
  const downloading = page.waitForEvent('download')
  await hand.press(button(hand, 'Save this job to a file'))
  const path = join(mkdtempSync(join(tmpdir(), 'job-')), 'job.zip')
  await (await downloading).saveAs(path)
  const files = unzipSync(new Uint8Array(readFileSync(path)))
  await page.keyboard.press('Escape')
  const job = savedJob.parse(JSON.parse(strFromU8(files['plan.json'] ?? new Uint8Array())))
  const traces = job.slabs[0]?.capture.traces ?? []
  return traces.find(({ meaning }) => meaning.kind === 'outline')?.ringPx ?? []
}

/** Middle of the slab's truth at a share of its length, photo px. */
const alongMiddle = (share: number): Point => {
  const [a, b] = [outline[0], outline[Math.floor(outline.length / 2)]]
  if (!a || !b) throw new Error('no outline')
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

async function atEdgeStage(hand: Hand): Promise<(px: readonly [number, number]) => { x: number; y: number }> {
  await hand.page.locator('.stage[aria-current="step"]').waitFor()
  await hand.press(stage(hand, /^Edge/))
  await hand.page.locator('.slab-canvas[data-view="photo"]').waitFor()
  await expect.poll(async () => (await listedObjects(hand)).length).toBeGreaterThan(4)
  return screenFromPhoto(hand)
}

const acceptOutline = (hand: Hand) => button(hand, 'Accept outline')
const isEnabled = (hand: Hand) => async (): Promise<boolean> => acceptOutline(hand).isEnabled()

async function strokeAlong(hand: Hand, toScreen: Awaited<ReturnType<typeof atEdgeStage>>): Promise<void> {
  const tool = button(hand, /^Mark wood/)
  if ((await tool.getAttribute('aria-pressed')) !== 'true') await hand.press(tool)
  await hand.drag(toScreen(toXy(alongMiddle(0.15))), toScreen(toXy(alongMiddle(0.85))))
  await expect.poll(isEnabled(hand), { timeout: 60_000 }).toBe(true)
}

const toXy = ([x, y]: Point): readonly [number, number] => [x, y]

const areaShareOff = (ring: readonly Point[]): number =>
  Math.abs(Math.abs(ringAreaMm2(ring) / ringAreaMm2(outline)) - 1)

appTest(
  'one stroke proposes the outline; discarded it leaves the job alone, accepted it is one step of undo',
  async ({ desktop }) => {
    const hand = mouseHand(desktop.page)
    const toScreen = await atEdgeStage(hand)
    const undo = button(hand, /^Undo/)
    expect(await undo.isDisabled()).toBe(true)
    await strokeAlong(hand, toScreen)
    await saveScreenshot(hand.page, 'outline proposed desktop')
    await hand.press(button(hand, 'Discard it'))
    expect(await acceptOutline(hand).count()).toBe(0)
    expect(await undo.isDisabled()).toBe(true)

    await strokeAlong(hand, toScreen)
    await hand.press(button(hand, /^Take back a stroke/))
    await expect.poll(() => acceptOutline(hand).count()).toBe(0)
    await strokeAlong(hand, toScreen)
    await hand.press(acceptOutline(hand))
    await expect.poll(() => undo.isEnabled()).toBe(true)
    const ring = await outlineOf(hand)
    const miss = ring.map((at) => pointToRingDistanceMm(at, outline)).toSorted((a, b) => a - b)
    const medianPx = miss[Math.floor(miss.length / 2)] ?? Infinity
    console.log(
      JSON.stringify({ strokes: 1, points: ring.length, medianPx, areaShareOff: areaShareOff(ring) }),
    )
    expect(medianPx).toBeLessThan(4)
    expect(areaShareOff(ring)).toBeLessThan(0.03)
    await hand.press(undo)
    await expect.poll(() => undo.isDisabled()).toBe(true)
  },
)

appTest('a finger marks the wood, corrects the outline and accepts it', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  const toScreen = await atEdgeStage(hand)
  await strokeAlong(hand, toScreen)
  await hand.press(button(hand, /^Mark not wood/))
  await hand.tapAt(toScreen([60, 60]))
  await expect.poll(isEnabled(hand), { timeout: 60_000 }).toBe(true)
  await saveScreenshot(hand.page, 'outline proposed phone')
  await hand.press(acceptOutline(hand))
  await expect.poll(() => acceptOutline(hand).count()).toBe(0)
  expect(areaShareOff(await outlineOf(hand))).toBeLessThan(0.03)
})

appTest('voids are proposed on the outline, and judged one by one', async ({ desktop }) => {
  const hand = mouseHand(desktop.page)
  await atEdgeStage(hand)
  const isVoid = /^Void \d/
  for (let left = 3; left > 0; left--) {
    await hand.press(button(hand, /^Remove Void/))
  }
  await hand.press(button(hand, 'Look for voids and cracks'))
  const proposals = hand.page.locator('.proposals > li')
  await expect.poll(() => proposals.count(), { timeout: 60_000 }).toBeGreaterThan(1)
  const count = await proposals.count()
  await hand.press(button(hand, /^Decline Proposal 1/))
  await expect.poll(() => proposals.count()).toBe(count - 1)
  await hand.press(button(hand, /^Accept Proposal 1/))
  await expect.poll(() => proposals.count()).toBe(count - 2)
  const cards = hand.page.locator('.card strong').filter({ hasText: isVoid })
  expect(await cards.count()).toBe(1)
})

appTest('an edge is pushed by a finger, thinned and cut back, each one step of undo', async ({ phone }) => {
  const hand = fingerHand(phone.page)
  const { page } = hand
  await atEdgeStage(hand)
  const undo = button(hand, /^Undo/)
  const before = await outlineOf(hand)
  await hand.press(button(hand, 'Push the edge'))
  await page.locator('.slab-canvas').scrollIntoViewIfNeeded()
  const first = (await listedObjects(hand)).find(({ key }) => key === 'trace/outline')
  if (!first?.photo) throw new Error('no outline')
  await hand.drag(first.screen, { x: first.screen.x + 16, y: first.screen.y + 4 })
  await expect.poll(() => undo.isEnabled()).toBe(true)
  const pushed = await outlineOf(hand)
  const at = first.photo
  expect(Math.min(...pushed.map(([x, y]) => Math.hypot(x - at[0], y - at[1])))).toBeGreaterThan(5)
  await hand.press(undo)
  await expect.poll(() => undo.isDisabled()).toBe(true)
  expect(await outlineOf(hand)).toEqual(before)

  await hand.type(field(hand, 'Thin the outline to within'), '5 mm')
  await hand.press(button(hand, 'Thin it'))
  await expect.poll(() => undo.isEnabled()).toBe(true)
  const thinned = await outlineOf(hand)
  expect(thinned.length).toBeLessThan(before.length / 1.5)
  for (const point of thinned) expect(before).toContainEqual(point)
  await hand.press(undo)

  const figures = page.locator('.figures').first()
  const said = await figures.innerText()
  await hand.type(field(hand, 'Decayed wood cut back'), '20 mm')
  await expect.poll(() => figures.innerText()).not.toBe(said)
  await hand.press(undo)
  await expect.poll(() => figures.innerText()).toBe(said)
})

appTest('strokes, proposals and the edge are worked by keys alone', async ({ desktop }) => {
  const { page } = desktop
  const hand = mouseHand(page)
  await atEdgeStage(hand)
  const undo = button(hand, /^Undo/)
  await page.locator('.slab-canvas-host').focus()
  await page.keyboard.press('k')
  // The cross begins in the middle of the picture, which is on the slab.
  for (let step = 0; step < 6; step++) await page.keyboard.press('Shift+ArrowLeft')
  await page.keyboard.press('Enter')
  for (let step = 0; step < 12; step++) await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Enter')
  await expect.poll(isEnabled(hand), { timeout: 60_000 }).toBe(true)
  await page.keyboard.press('Enter')
  await expect.poll(() => undo.isEnabled()).toBe(true)
  const ring = await outlineOf(hand)
  expect(areaShareOff(ring)).toBeLessThan(0.03)
})

declare global {
  interface Window {
    moveLatencies: number[]
    /** From asking the worker to its answer. */
    workerLatencies: number[]
    paintLatencies: number[]
  }
}

/** Notes how long after the pointer's move its line is there, and how long until the frame that shows it. */
async function watchMoves(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.moveLatencies = []
    window.workerLatencies = []
    window.paintLatencies = []
    let movedAt = 0
    const asked = new Map<number, readonly [movedAt: number, postedAt: number]>()
    window.addEventListener('pointermove', (event) => (movedAt = event.timeStamp), true)
    const post = Object.getOwnPropertyDescriptor(Worker.prototype, 'postMessage')?.value as (
      ...args: unknown[]
    ) => void
    const heard = new WeakSet<Worker>()
    Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: unknown[]): void {
      const { jobId, task } = message as { jobId?: number; task?: { kind: string; step?: { kind: string } } }
      if (jobId !== undefined && task?.kind === 'follow' && task.step?.kind === 'move')
        asked.set(jobId, [movedAt, performance.now()])
      if (!heard.has(this)) {
        heard.add(this)
        this.addEventListener('message', ({ data }: MessageEvent<{ kind: string; jobId: number }>) => {
          const at = asked.get(data.jobId)
          if (at === undefined || data.kind !== 'done') return
          asked.delete(data.jobId)
          const [moved, posted] = at
          window.moveLatencies.push(performance.now() - moved)
          window.workerLatencies.push(performance.now() - posted)
          requestAnimationFrame(() => window.paintLatencies.push(performance.now() - moved))
        })
      }
      Reflect.apply(post, this, [message, ...rest])
    }
  })
}

const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? Number.NaN

appTest(
  'a line follows the edge of a 12 megapixel photo as the pointer moves along it',
  async ({ desktop }) => {
    const { page } = desktop
    await watchMoves(page)
    await page.reload()
    const hand = mouseHand(page)
    const file = join(mkdtempSync(join(tmpdir(), 'photo-')), 'slab.jpg')
    writeFileSync(file, photoJpeg({ photo: 'd2', size: '12 MP' }))
    await startWithPhoto(hand, file)
    const factor = 4000 / truth.photo.width_px
    const large = outline.map(([x, y]) => [x * factor, y * factor] as const)
    await placeMarks(
      hand,
      markPlaces(truth).map(([x, y]) => [x * factor, y * factor] as const),
    )
    await hand.press(stage(hand, /^Edge/))
    const toScreen = await screenFromPhoto(hand)
    await hand.press(button(hand, 'Follow the edge by hand'))
    await page.waitForTimeout(2500)

    const every = 8
    const places = large.filter((_, n) => n % every === 0).map(toScreen)
    for (const [n, place] of places.entries()) {
      if (n % 24 === 0) await hand.tapAt(place)
      else await page.mouse.move(place.x, place.y)
    }
    await saveScreenshot(page, 'edge followed')
    await page.keyboard.press('Enter')
    await button(hand, 'Remove outline').waitFor()
    const { moves, paints, worker } = await page.evaluate(() => ({
      worker: window.workerLatencies,
      moves: window.moveLatencies,
      paints: window.paintLatencies,
    }))
    const ring = await outlineOf(hand)
    const miss = ring.map((at) => pointToRingDistanceMm(at, large) / factor)
    const figures = {
      photo: '12 MP',
      moves: moves.length,
      medianMs: percentile(moves, 0.5),
      latency95Ms: percentile(moves, 0.95),
      worker50Ms: percentile(worker, 0.5),
      worker95Ms: percentile(worker, 0.95),
      toFrame95Ms: percentile(paints, 0.95),
      points: ring.length,
      missMedianPx: percentile(miss, 0.5),
      miss95Px: percentile(miss, 0.95),
    }
    console.log(JSON.stringify(figures))
    expect(moves.length).toBeGreaterThan(100)
    expect(figures.latency95Ms).toBeLessThan(BUSY * LATENCY_MS)
    expect(figures.missMedianPx).toBeLessThan(4)
    expect(Math.abs(ringAreaMm2(ring) / ringAreaMm2(large))).toBeCloseTo(1, 1)
  },
)
