import type { Point, PxPoint } from '../geometry'
import { type PixelWindow, windowAround } from './pixelWindow'
import { refineBoard } from './refineBoard'
import { refineCross } from './refineCross'
import { type RefinedClick, unsure } from './refined'
import { refineLine } from './refineLine'
import { refineRoundMark } from './refineRound'
import { refineRule } from './refineRule'

/** Clicks that belong to one thing, and what kind of thing it is. */
export type ClickedThing =
  | { readonly kind: 'mark'; readonly atPx: PxPoint }
  | { readonly kind: 'board'; readonly cornersPx: readonly [PxPoint, PxPoint, PxPoint, PxPoint] }
  | { readonly kind: 'rule'; readonly endsPx: readonly [PxPoint, PxPoint] }
  | { readonly kind: 'line'; readonly pointsPx: readonly PxPoint[] }

export interface PixelBox {
  readonly xPx: number
  readonly yPx: number
  readonly widthPx: number
  readonly heightPx: number
}

/** How far round the clicks the refinements look, px: 320 for a large cross, 34 across a rule, 14 at a board. */
const MARGIN_PX = { mark: 326, board: 32, rule: 60, line: 24 } as const
/** The part of a photo that is read at once is at most so large, four bytes each. */
const MOST_PIXELS = 24_000_000

export const clicksOf = (thing: ClickedThing): readonly PxPoint[] => {
  switch (thing.kind) {
    case 'mark':
      return [thing.atPx]
    case 'board':
      return thing.cornersPx
    case 'rule':
      return thing.endsPx
    case 'line':
      return thing.pointsPx
  }
}

/**
 * The part of the photo that `refineClicks` wants to see.
 * @returns whole pixels within the photo; null when the clicks lie beside it or the part would be too large to read
 */
export function boxRound(
  thing: ClickedThing,
  photo: { readonly widthPx: number; readonly heightPx: number },
): PixelBox | null {
  const points: readonly Point[] = clicksOf(thing)
  const margin = MARGIN_PX[thing.kind]
  const low = (axis: 0 | 1): number =>
    Math.max(0, Math.floor(Math.min(...points.map((p) => p[axis])) - margin))
  const high = (axis: 0 | 1, most: number): number =>
    Math.min(most, Math.ceil(Math.max(...points.map((p) => p[axis])) + margin))
  const [xPx, yPx] = [low(0), low(1)]
  const [widthPx, heightPx] = [high(0, photo.widthPx) - xPx, high(1, photo.heightPx) - yPx]
  const isReadable = widthPx > 0 && heightPx > 0 && widthPx * heightPx <= MOST_PIXELS
  return isReadable ? { xPx, yPx, widthPx, heightPx } : null
}

/**
 * Clicks moved to what they meant, to a fraction of a pixel.
 * @param window the part of the full-resolution photo round them (`boxRound`)
 * @returns one answer for each click, in order; a click that is not sure stays where it is
 * A mark is tried as a round one, then as a cross of tape. Rules: PHO-16.
 */
export function refineClicks(window: PixelWindow, thing: ClickedThing): readonly RefinedClick[] {
  switch (thing.kind) {
    case 'mark':
      return [refineMark(window, thing.atPx)]
    case 'board':
      return refineBoard(window, thing.cornersPx).corners
    case 'rule':
      return refineRule(window, thing.endsPx)
    case 'line': {
      const { pointsPx, sure, sdPx } = refineLine(window, thing.pointsPx)
      return sure ? pointsPx.map((px) => ({ px, sure, sdPx })) : thing.pointsPx.map((px) => unsure(px))
    }
  }
}

/** Most marks are small: both kinds are tried near the click before anything looks further round it, which takes long. */
const MARK_HALVES_PX = [112, MARGIN_PX.mark]

function refineMark(photo: PixelWindow, atPx: PxPoint): RefinedClick {
  for (const half of MARK_HALVES_PX) {
    const window = windowAround(photo, atPx, half)
    for (const refine of [refineRoundMark, refineCross]) {
      const found = refine(window, atPx)
      if (found.sure) return found
    }
  }
  return unsure(atPx)
}
