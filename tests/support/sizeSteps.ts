import { fileURLToPath } from 'node:url'
import { expect } from 'vitest'
import type { Point } from '../../src/core/geometry'
import { button, field, marksOf, screenFromPhoto, stage } from './bench'
import type { Hand } from './hand'
import type { PhotoTruth } from './truth'

/** What a maker does at the stage Size, with marks whose truth is known. */

export const demoPhotoPath = (name: string): string =>
  fileURLToPath(new URL(`../photos/${name}.jpg`, import.meta.url))

/** The truth's own places of the marks in the photo. */
export function markPlaces(truth: PhotoTruth): readonly Point[] {
  const reference = truth.references.find((found) => found.type === 'discs' || found.type === 'crosses')
  if (reference === undefined || !('centers_px' in reference)) throw new Error('no marks in this photo')
  return reference.centers_px
}

/** What a tape reads between them, to the whole millimetre: `A – B` and the length. */
export function tapeReadings(truth: PhotoTruth): readonly (readonly [names: string, lengthMm: number])[] {
  const reference = truth.references.find((found) => 'pair_distances_mm' in found)
  if (reference === undefined || !('pair_distances_mm' in reference)) throw new Error('no distances')
  return Object.entries(reference.pair_distances_mm).map(([pair, mm]) => [
    pair.replace(/\d/g, (digit) => 'ABCD'[Number(digit) - 1] ?? '?').replace('-', ' – '),
    Math.round(mm),
  ])
}

/**
 * Two marks anywhere tell how the picture lies; they are then dragged to where they belong, and the others tapped.
 * @param places where the hand sets the marks, photo px
 */
export async function placeMarks(hand: Hand, places: readonly Point[]): Promise<void> {
  await hand.press(stage(hand, /^Size/))
  await hand.press(button(hand, /^(Place a mark|Mark)$/))
  const canvas = await hand.page.locator('.slab-canvas-host').boundingBox()
  if (canvas === null) throw new Error('no canvas')
  const at = (x: number, y: number) => ({ x: canvas.x + canvas.width * x, y: canvas.y + canvas.height * y })
  await hand.tapAt(at(0.4, 0.45))
  await expect.poll(async () => (await marksOf(hand)).length).toBe(1)
  await hand.tapAt(at(0.62, 0.55))
  await expect.poll(async () => (await marksOf(hand)).length).toBe(2)
  for (const [index, px] of places.entries()) {
    const toScreen = await screenFromPhoto(hand)
    const mark = (await marksOf(hand))[index]
    if (index >= 2) await hand.tapAt(toScreen([px[0], px[1]]))
    else if (mark !== undefined) await hand.drag(mark.screen, toScreen([px[0], px[1]]))
  }
  await expect.poll(async () => (await marksOf(hand)).length).toBe(places.length)
}

export async function typeTape(
  hand: Hand,
  readings: readonly (readonly [names: string, lengthMm: number])[],
): Promise<void> {
  for (const [names, lengthMm] of readings) {
    await hand.type(field(hand, `Taped distance ${names}`), String(lengthMm))
  }
}
