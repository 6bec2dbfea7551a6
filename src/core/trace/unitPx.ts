import type { Picture } from './picture'

/** Blur and noise grow with the picture's size. */
const MEANT_SIDE_PX = 3000
const LEAST_PX = 0.5

/**
 * Photo pixels of a step across an edge: one when the longer side has 3000. Lengths found by trial are meant in steps,
 * so that a larger photo of the same slab gives the same line.
 */
export const unitPx = ({ widthPx, heightPx }: Picture): number =>
  Math.max(LEAST_PX, Math.max(widthPx, heightPx) / MEANT_SIDE_PX)
