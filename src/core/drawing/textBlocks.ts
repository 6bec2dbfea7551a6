import type { Block } from './block'
import type { DrawItem, Stroke, TextAnchor, TextWeight } from './sheet'
import { textBlock, textItem } from './textItems'
import { CAP_HEIGHT, INK_BOTTOM } from './textMetrics'

export interface ParagraphStyle {
  readonly sizeMm: number
  readonly weight?: TextWeight
  readonly widthMm: number
  readonly spaceBeforeMm?: number
  readonly keepWithNext?: boolean
}

/** A paragraph wrapped to a width; its height includes the tails of the last line. */
export function paragraph(text: string, style: ParagraphStyle): Block {
  const room = { sizeMm: style.sizeMm, weight: style.weight ?? 'regular', maxWidthMm: style.widthMm } as const
  return {
    heightMm: textBlock(text, [0, 0], room).heightMm - INK_BOTTOM * style.sizeMm,
    spaceBeforeMm: style.spaceBeforeMm ?? 1.2,
    ...(style.keepWithNext ? { keepWithNext: true } : {}),
    draw: (topLeft) => textBlock(text, topLeft, room).items,
  }
}

/** A paragraph with a hanging mark before it: `1`, `2`, or a dash. */
export function listItem(
  mark: string,
  text: string,
  style: ParagraphStyle & { readonly indentMm: number },
): Block {
  const body = paragraph(text, { ...style, widthMm: style.widthMm - style.indentMm })
  return {
    ...body,
    draw: ([x, y]) => [
      textItem(mark, [x, y + CAP_HEIGHT * style.sizeMm], { sizeMm: style.sizeMm, weight: 'bold' }),
      ...body.draw([x + style.indentMm, y]),
    ],
  }
}

export interface TableColumn {
  readonly widthMm: number
  readonly anchor?: TextAnchor
  readonly weight?: TextWeight
}

export interface TableRowStyle {
  readonly sizeMm: number
  readonly spaceBeforeMm: number
  /** Air over and under the texts, mm. */
  readonly padMm?: number
  readonly weight?: TextWeight
  readonly ruleBelow?: Stroke
  readonly keepWithNext?: boolean
}

/** Air between columns, mm. */
const COLUMN_GAP_MM = 2.5

/** A row of a table: cells wrapped to their columns, first lines on one baseline, a rule below if asked for. */
export function tableRow(
  columns: readonly TableColumn[],
  cells: readonly string[],
  style: TableRowStyle,
): Block {
  const { sizeMm, padMm = 0 } = style
  const laid = columns.map((column, k) => {
    const leftMm = columns.slice(0, k).reduce((sum, before) => sum + before.widthMm, 0)
    const room = {
      sizeMm,
      weight: style.weight ?? column.weight ?? 'regular',
      maxWidthMm: column.widthMm - COLUMN_GAP_MM,
    } as const
    return { leftMm, room, column, text: cells[k] ?? '' }
  })
  const heights = laid.map(({ text, room }) => textBlock(text, [0, 0], room).heightMm)
  const heightMm = Math.max(...heights) - INK_BOTTOM * sizeMm + 2 * padMm
  const width = columns.reduce((sum, column) => sum + column.widthMm, 0)
  return {
    heightMm,
    spaceBeforeMm: style.spaceBeforeMm,
    ...(style.keepWithNext ? { keepWithNext: true } : {}),
    draw: ([x, y]) => {
      const texts = laid
        .filter(({ text }) => text !== '')
        .flatMap(({ leftMm, room, column, text }): readonly DrawItem[] => {
          const items = textBlock(text, [x + leftMm, y + padMm], room).items
          if (column.anchor !== 'end') return items
          return items.map((item) => ({
            ...item,
            anchor: 'end',
            at: [item.at[0] + room.maxWidthMm, item.at[1]],
          }))
        })
      if (style.ruleBelow === undefined) return texts
      const bottom = y + heightMm
      return [
        ...texts,
        {
          kind: 'segments',
          segments: [
            [
              [x, bottom],
              [x + width, bottom],
            ],
          ],
          stroke: style.ruleBelow,
        },
      ]
    },
  }
}
