import { type Point, pointDistanceMm } from '../../../core/geometry'
import type { Size } from '../view'

/** Radius of the loupe on screen, px. */
export const LOUPE_RADIUS_PX = 66
/** How much larger than on screen things are in the loupe. */
export const LOUPE_POWER = 3
/** From the fingertip's middle to the loupe's rim: a fingertip hides about 25 px round its middle. */
const CLEAR_PX = { touch: 40, other: 24 } as const
const MARGIN_PX = 6

/**
 * Where the loupe stands: beside the pointer and its aim, never over either, inside the canvas if it fits.
 * @param pointerAt the finger or cursor; `aim` the point that is being set (above the finger on touch)
 */
export function loupeCentre(pointerAt: Point, aim: Point, touch: boolean, size: Size): Point {
  const clear = LOUPE_RADIUS_PX + (touch ? CLEAR_PX.touch : CLEAR_PX.other)
  const top = Math.min(pointerAt[1], aim[1])
  const candidates: readonly Point[] = [
    [pointerAt[0], top - clear],
    [pointerAt[0] - clear, top - clear / 2],
    [pointerAt[0] + clear, top - clear / 2],
    [pointerAt[0] - clear, pointerAt[1]],
    [pointerAt[0] + clear, pointerAt[1]],
    [pointerAt[0], pointerAt[1] + clear],
  ]
  const isClear = (centre: Point): boolean =>
    pointDistanceMm(centre, pointerAt) > LOUPE_RADIUS_PX && pointDistanceMm(centre, aim) > LOUPE_RADIUS_PX
  const whole = candidates.find((centre) => isInside(centre, size) && isClear(centre))
  return whole ?? farCorner(pointerAt, size)
}

function isInside([x, y]: Point, { width, height }: Size): boolean {
  const reach = LOUPE_RADIUS_PX + MARGIN_PX
  return x >= reach && y >= reach && x <= width - reach && y <= height - reach
}

/** In a canvas too small for a place beside the finger, the corner farthest from it. */
function farCorner([x, y]: Point, { width, height }: Size): Point {
  const reach = LOUPE_RADIUS_PX + MARGIN_PX
  return [x < width / 2 ? width - reach : reach, y < height / 2 ? height - reach : reach]
}
