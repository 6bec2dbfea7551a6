import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Point, pointDistanceMm, ringAreaMm2, simplifyRing } from '../../src/core/geometry'
import { button, field, listedPoints, screenFromPhoto, stage, startWithPhoto } from './bench'
import { saveScreenshot } from './browser'
import type { Hand } from './hand'
import { printToPdf, readPdf, savePdf } from './pdf'
import { demoPhotoPath, markPlaces, placeMarks, tapeReadings, typeTape } from './sizeSteps'
import { type PagePoint, touchGesture, touchPinch } from './touch'
import { type PhotoTruth, readTruth } from './truth'

/** How far apart a maker taps along the edge, px on the screen: nearer taps would take hold of the last point. */
export interface Tapping {
  readonly leastSpacingPx: number
  /** How far the picture is pinched open first. */
  readonly zoom: number
  readonly simplifyPhotoPx: number
}

export interface Job {
  readonly photo: 'd2' | 'd4'
  readonly table: { readonly lengthMm: number; readonly widthMm: number; readonly thicknessMm: number }
}

export const JOBS: readonly Job[] = [
  { photo: 'd2', table: { lengthMm: 2000, widthMm: 900, thicknessMm: 45 } },
  { photo: 'd4', table: { lengthMm: 1800, widthMm: 800, thicknessMm: 36 } },
]

export const MOUSE: Tapping = { leastSpacingPx: 9, zoom: 1, simplifyPhotoPx: 2 }
export const FINGER: Tapping = { leastSpacingPx: 15, zoom: 5, simplifyPhotoPx: 2 }

/** Points along a ring that are far enough apart on the screen to be tapped one by one. */
function tapsAlong(
  ring: readonly Point[],
  toScreen: Awaited<ReturnType<typeof screenFromPhoto>>,
  { leastSpacingPx, simplifyPhotoPx }: Tapping,
): readonly Point[] {
  const taps: Point[] = []
  for (const px of simplifyRing(ring, simplifyPhotoPx)) {
    const near = taps.some((tap) => {
      const [p, q] = [toScreen([tap[0], tap[1]]), toScreen([px[0], px[1]])]
      return Math.hypot(p.x - q.x, p.y - q.y) < leastSpacingPx
    })
    if (!near) taps.push(px)
  }
  return taps
}

async function zoomInto(hand: Hand, factor: number): Promise<void> {
  const canvas = await hand.page.locator('.slab-canvas-host').boundingBox()
  if (canvas === null) throw new Error('no canvas')
  const before = (await screenFromPhoto(hand))([0, 0])
  await touchPinch(hand.page, { x: canvas.x + canvas.width / 2, y: canvas.y + canvas.height / 2 }, factor)
  await expect.poll(async () => (await screenFromPhoto(hand))([0, 0]).x).not.toBe(before.x)
}

async function traceRing(hand: Hand, taps: readonly Point[]): Promise<void> {
  for (const [x, y] of taps) {
    const at = (await screenFromPhoto(hand))([x, y])
    await hand.tapAt(await broughtIntoView(hand, at, [x, y]))
  }
  await hand.press(button(hand, 'Close it'))
}

/** Moves the picture, two fingers side by side, until a place of the photo can be tapped. */
async function broughtIntoView(hand: Hand, at: PagePoint, px: Point): Promise<PagePoint> {
  const canvas = await hand.page.locator('.slab-canvas-host').boundingBox()
  if (canvas === null) throw new Error('no canvas')
  const middle = { x: canvas.x + canvas.width / 2, y: canvas.y + canvas.height / 2 }
  // Tools lie over the upper rim, hints and zoom over the lower one.
  const isClear =
    Math.abs(at.x - middle.x) < canvas.width / 2 - 24 && Math.abs(at.y - middle.y) < canvas.height / 2 - 90
  if (isClear) return at
  const within = (value: number, most: number) => Math.max(-most, Math.min(most, value))
  const by = {
    x: within(middle.x - at.x, canvas.width / 2 - 60),
    y: within(middle.y - at.y, canvas.height / 2 - 60),
  }
  const from = { x: middle.x - by.x / 2, y: middle.y - by.y / 2 }
  const to = { x: middle.x + by.x / 2, y: middle.y + by.y / 2 }
  const beside = (point: PagePoint, dx: number) => ({ x: point.x + dx, y: point.y })
  await touchGesture(
    hand.page,
    [-25, 25].map((dx) => ({ from: beside(from, dx), to: beside(to, dx) })),
  )
  const moved = async () => (await screenFromPhoto(hand))([px[0], px[1]])
  await expect
    .poll(async () => {
      const now = await moved()
      return Math.hypot(now.x - at.x - by.x, now.y - at.y - by.y)
    })
    .toBeLessThan(1)
  return broughtIntoView(hand, await moved(), px)
}

/** Vertices of the truth nearest to the taps: what the listed points should measure. */
function truthAt(truth: PhotoTruth, taps: readonly Point[]): readonly Point[] {
  const { top_outline_px: px, top_outline_mm: mm } = truth.slab
  return taps.map((tap) => {
    const distances = px.map((point) => pointDistanceMm(point, tap))
    const nearest = mm[distances.indexOf(Math.min(...distances))]
    if (nearest === undefined) throw new Error('no vertex')
    return nearest
  })
}

export async function checkAgainstTruth(
  hand: Hand,
  truth: PhotoTruth,
  taps: readonly Point[],
): Promise<void> {
  await hand.press(hand.page.getByText(/^Points: \d+$/).first())
  await expect.poll(async () => (await listedPoints(hand)).length).toBe(taps.length)
  const listed = await listedPoints(hand)
  const real = truthAt(truth, taps)
  const areaError = Math.abs(ringAreaMm2(listed)) / truth.slab.top_area_gross_mm2 - 1
  // Ten lengths right across the slab: each from one point to the one half-way round.
  const half = Math.floor(listed.length / 2)
  const ten = Array.from({ length: 10 }, (_, index) => Math.floor((index * half) / 10))
  const lengthsMm = ten.map((from) => {
    const [a, b] = [from, from + half]
    return {
      found: pointDistanceMm(listed[a] ?? [0, 0], listed[b] ?? [0, 0]),
      real: pointDistanceMm(real[a] ?? [0, 0], real[b] ?? [0, 0]),
    }
  })
  const errorsMm = lengthsMm.map(({ found, real: truly }) => found - truly)
  console.log(
    JSON.stringify({
      photo: truth.name,
      points: taps.length,
      areaErrorPercent: Number((areaError * 100).toFixed(3)),
      lengthsMm: lengthsMm.map(({ real: truly }) => Math.round(truly)),
      lengthErrorsMm: errorsMm.map((error) => Number(error.toFixed(1))),
    }),
  )
  expect(Math.abs(areaError)).toBeLessThan(0.005)
  expect(lengthsMm.every(({ real: truly }) => truly > 500)).toBe(true)
  for (const error of errorsMm) expect(Math.abs(error)).toBeLessThan(6)
}

const figure = async (page: Page, name: RegExp): Promise<number> => {
  const text = await page.locator('.decide, [aria-label="What decides"]').first().innerText()
  const lines = text.split('\n').map((line) => line.trim())
  const at = lines.findIndex((line) => name.test(line))
  return Number.parseFloat((lines[at + 1] ?? '').replace(/[^\d.]/g, ''))
}

export async function layTable(hand: Hand, { table }: Job): Promise<void> {
  await hand.press(stage(hand, /^Table/))
  await hand.type(field(hand, 'Length'), String(table.lengthMm))
  await hand.type(field(hand, 'Width'), String(table.widthMm))
  await hand.type(field(hand, 'Thickness'), String(table.thicknessMm))
  await hand.press(button(hand, 'Lay the table on the slab'))
  await hand.page
    .getByText(/Covered with resin|Covers|Does not cover/)
    .first()
    .waitFor()
}

export async function fillWithOffcut(hand: Hand): Promise<void> {
  await hand.press(stage(hand, /^Cuts/))
  const before = await figure(hand.page, /^Resin/)
  expect(before).toBeGreaterThan(1)
  await hand.press(button(hand, /Lay into the gap|Lay .* into the gap/))
  await expect.poll(() => figure(hand.page, /^Resin/)).toBeLessThan(before)
}

export async function printCutSheet(hand: Hand, name: string): Promise<void> {
  const { page } = hand
  await hand.press(stage(hand, /^Paper/))
  await hand.press(page.getByRole('radio', { name: 'A4' }))
  await page.locator('.sheet-preview svg').first().waitFor()
  const bytes = await printToPdf(page)
  savePdf(bytes, name)
  const pages = await readPdf(bytes)
  expect(pages.length).toBeGreaterThan(0)
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')
  expect(words).toContain('Cut sheet')
  expect(words).toMatch(/mm/)
}

/** A whole job as a maker does it: photo, size, edge, table, offcut, printed sheet; its figures held to the truth. */
export async function doTheJob(hand: Hand, job: Job, tapping: Tapping, name: string): Promise<void> {
  const truth = readTruth(job.photo)
  await startWithPhoto(hand, demoPhotoPath(job.photo))
  await hand.press(stage(hand, /^Photo/))
  await hand.type(field(hand, 'Thickness as it lies'), String(truth.slab.thickness_mm))
  await placeMarks(hand, markPlaces(truth))
  await typeTape(hand, tapeReadings(truth))
  await saveScreenshot(hand.page, `${name} scale`)
  await hand.press(stage(hand, /^Edge/))
  await hand.press(button(hand, /^Outline$/))
  if (tapping.zoom > 1) await zoomInto(hand, tapping.zoom)
  const taps = tapsAlong(truth.slab.top_outline_px, await screenFromPhoto(hand), tapping)
  await traceRing(hand, taps)
  await saveScreenshot(hand.page, `${name} traced`)
  await checkAgainstTruth(hand, truth, taps)
  await layTable(hand, job)
  await saveScreenshot(hand.page, `${name} table`)
  await fillWithOffcut(hand)
  await saveScreenshot(hand.page, `${name} offcut`)
  await printCutSheet(hand, `${name} cut sheet`)
}
