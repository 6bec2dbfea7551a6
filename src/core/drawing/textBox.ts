import type { Point } from '../geometry'
import type { Box, TextItem } from './sheet'
import { INK_BOTTOM, INK_TOP, textWidthMm } from './textMetrics'

/** White margin of a plate round its text, mm. */
export const PLATE_MARGIN_MM = 0.6

const START_SHARE = { start: 0, middle: 0.5, end: 1 } as const

/**
 * The four corners of the ink of a text on the sheet, in order round it.
 * @param marginMm  grown by so much on every side
 * Rules: DRW-4.
 */
export function textCorners(item: TextItem, marginMm = 0): readonly [Point, Point, Point, Point] {
  const width = textWidthMm(item.text, item.sizeMm, item.weight)
  const left = -START_SHARE[item.anchor] * width - marginMm
  const right = left + width + 2 * marginMm
  const top = -INK_TOP * item.sizeMm - marginMm
  const bottom = -INK_BOTTOM * item.sizeMm + marginMm
  const [cos, sin] = [Math.cos(item.angleRad), Math.sin(item.angleRad)]
  const turned = (x: number, y: number): Point => [
    item.at[0] + x * cos - y * sin,
    item.at[1] + x * sin + y * cos,
  ]
  return [turned(left, top), turned(right, top), turned(right, bottom), turned(left, bottom)]
}

/** Smallest upright box round the ink of a text. */
export function textBox(item: TextItem, marginMm = 0): Box {
  const corners = textCorners(item, marginMm)
  const xs = corners.map(([x]) => x)
  const ys = corners.map(([, y]) => y)
  const [xMm, yMm] = [Math.min(...xs), Math.min(...ys)]
  return { xMm, yMm, widthMm: Math.max(...xs) - xMm, heightMm: Math.max(...ys) - yMm }
}
