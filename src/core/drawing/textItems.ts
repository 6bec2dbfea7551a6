import type { Point } from '../geometry'
import type { TextAnchor, TextItem, TextWeight } from './sheet'
import { CAP_HEIGHT } from './textMetrics'
import { wrapText } from './wrapText'

export interface TextStyle {
  readonly sizeMm: number
  readonly weight?: TextWeight
  readonly anchor?: TextAnchor
  readonly angleRad?: number
  readonly plate?: boolean
  readonly maxWidthMm?: number
  readonly reversed?: boolean
}

/** Distance from baseline to baseline as a share of the font size. */
export const LINE_SPACING = 1.32

/** One line of text with its baseline starting (or centred, or ending) at a point of the sheet. */
export function textItem(text: string, at: Point, style: TextStyle): TextItem {
  const { sizeMm, weight = 'regular', anchor = 'start', angleRad = 0, plate = false } = style
  return {
    kind: 'text',
    text,
    at,
    sizeMm,
    weight,
    anchor,
    angleRad,
    plate,
    ...(style.maxWidthMm === undefined ? {} : { maxWidthMm: style.maxWidthMm }),
    ...(style.reversed ? { reversed: true } : {}),
  }
}

/** One line of text whose capitals stand centred on a point. */
export function centredText(text: string, centre: Point, style: Omit<TextStyle, 'anchor'>): TextItem {
  const drop = (CAP_HEIGHT * style.sizeMm) / 2
  const { angleRad = 0 } = style
  const at: Point = [centre[0] - drop * Math.sin(angleRad), centre[1] + drop * Math.cos(angleRad)]
  return textItem(text, at, { ...style, anchor: 'middle' })
}

export interface TextBlock {
  readonly items: readonly TextItem[]
  /** From the top of the first line's capitals to the last baseline, mm. */
  readonly heightMm: number
}

/**
 * A paragraph, wrapped to a width.
 * @param topLeft  where the top of the first line's capitals begins
 * Rules: DRW-3.
 */
export function textBlock(
  text: string,
  topLeft: Point,
  style: { readonly sizeMm: number; readonly weight?: TextWeight; readonly maxWidthMm: number },
): TextBlock {
  const { sizeMm, weight = 'regular', maxWidthMm } = style
  const lines = wrapText(text, style)
  const [x, y] = topLeft
  const firstBaseline = y + CAP_HEIGHT * sizeMm
  const step = LINE_SPACING * sizeMm
  return {
    items: lines.map((line, k) =>
      textItem(line, [x, firstBaseline + k * step], { sizeMm, weight, maxWidthMm }),
    ),
    heightMm: CAP_HEIGHT * sizeMm + (lines.length - 1) * step,
  }
}
