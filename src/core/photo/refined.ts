import { type Point, type PxPoint, pxPoint } from '../geometry'

/** A click after the program has looked at the pixels round it. */
export interface RefinedClick {
  /** Where the thing stands; the click itself when not sure. */
  readonly px: PxPoint
  readonly sure: boolean
  /** Standard deviation of `px`, px; of the click when not sure. */
  readonly sdPx: number
}

/** Standard deviation of a finger on a phone or a mouse at a zoom that shows the whole mark, px of the photo. */
export const THUMB_SD_PX = 3

export const unsure = ([x, y]: Point): RefinedClick => ({ px: pxPoint(x, y), sure: false, sdPx: THUMB_SD_PX })

export const refinedTo = ([x, y]: Point, sdPx: number): RefinedClick => ({
  px: pxPoint(x, y),
  sure: true,
  sdPx,
})
