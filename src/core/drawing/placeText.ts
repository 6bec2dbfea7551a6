import type { Point } from '../geometry'
import { convexOverlap } from './convexOverlap'
import type { Box, TextItem } from './sheet'
import { textCorners } from './textBox'

/** Air that is kept round a placed text, mm. */
const AIR_MM = 0.8

/**
 * The first of several places for a label that is free.
 * @param candidates  the same label in the places that would do, best first
 * @param taken       convex figures on the sheet that it must keep off: other texts' corners, symbols
 * @param within      the part of the sheet that it must not leave
 * @returns null when every place is taken: then the caller says it elsewhere
 * Rules: DRW-8.
 */
export function firstFreeText(
  candidates: readonly TextItem[],
  taken: readonly (readonly Point[])[],
  within: Box,
): TextItem | null {
  const isFree = (candidate: TextItem): boolean => {
    const corners = textCorners(candidate, AIR_MM)
    return (
      corners.every((corner) => isInBox(corner, within)) &&
      !taken.some((figure) => convexOverlap(corners, figure))
    )
  }
  return candidates.find(isFree) ?? null
}

const isInBox = ([x, y]: Point, { xMm, yMm, widthMm, heightMm }: Box): boolean =>
  x >= xMm && y >= yMm && x <= xMm + widthMm && y <= yMm + heightMm
