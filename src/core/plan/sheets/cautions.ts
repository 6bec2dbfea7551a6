import { type Block, listItem, paragraph } from '../../drawing'
import type { SheetText } from '../text/en/sheet'
import { type ColumnStyle, USUAL_COLUMN } from './sheetStyle'

const INDENT_MM = 4

const cautionBlocks = (
  heading: string,
  cautions: readonly string[],
  widthMm: number,
  style: ColumnStyle,
): readonly Block[] => [
  paragraph(heading, { sizeMm: style.headingMm, weight: 'bold', widthMm }),
  ...cautions.map((caution) =>
    listItem('–', caution, {
      sizeMm: style.bodyMm,
      widthMm,
      indentMm: INDENT_MM,
      spaceBeforeMm: style.airMm,
    }),
  ),
]

/** What can hurt at the saw and at the slab. Rules: SHT-6. */
export const sawCautions = (text: SheetText, widthMm: number): readonly Block[] =>
  cautionBlocks(
    text.sheetSawHeading,
    [text.sheetSawTrace, text.sheetSawStress, text.sheetSawSupport, text.sheetSawLift, text.sheetSawDust],
    widthMm,
    USUAL_COLUMN,
  )

/** What can hurt at the pour. Rules: SHT-6. */
export const pourCautions = (text: SheetText, widthMm: number, style: ColumnStyle): readonly Block[] =>
  cautionBlocks(
    text.sheetPourHeading,
    [
      text.sheetPourSheet,
      text.sheetPourSkin,
      text.sheetPourVapour,
      text.sheetPourHeat,
      text.sheetPourLeftovers,
      text.sheetPourDust,
    ],
    widthMm,
    style,
  )
