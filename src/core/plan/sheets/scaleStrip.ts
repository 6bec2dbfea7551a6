import { formatLength } from '../../units'
import {
  type Block,
  CAP_HEIGHT,
  type DrawingScale,
  paragraph,
  scaleBar,
  scaleBarLengthMm,
  scaleText,
  stackBlocks,
} from '../../drawing'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

const TEXT_OVER_BAR_MM = CAP_HEIGHT * SIZE.note + 1.2
const BAR_MM = 2
const AIR_MM = 1.8

/** Width of the strip, mm: that of the longer bar. */
export const SCALE_STRIP_MM = 102

/** The true bar, what it must measure, and the drawing's scale. */
export function scaleStrip(
  { display, text }: Pick<SheetInput, 'display' | 'text'>,
  scale: DrawingScale,
): Block {
  const { system } = display
  const onWood = formatLength(scaleBarLengthMm(system) * scale.ratio, display)
  const style = { sizeMm: SIZE.note, widthMm: SCALE_STRIP_MM }
  const stands = paragraph(text.sheetBarStands({ scale: scaleText(scale), length: onWood }), {
    ...style,
    weight: 'bold',
  })
  const notes = [stands, paragraph(system === 'mm' ? text.sheetBarMm : text.sheetBarInch, style)]
  const notesTop = TEXT_OVER_BAR_MM + BAR_MM + AIR_MM
  return {
    heightMm: notesTop + notes.reduce((sum, note) => sum + note.heightMm + note.spaceBeforeMm, 0),
    spaceBeforeMm: 2,
    draw: ([x, y]) => [
      ...scaleBar({
        at: [x, y + TEXT_OVER_BAR_MM],
        system,
        endTexts: ['0', system === 'mm' ? text.sheetBarEndMm : text.sheetBarEndInch],
        sizeMm: SIZE.note,
      }),
      ...stackBlocks(notes, { xMm: x, yMm: y + notesTop }),
    ],
  }
}
