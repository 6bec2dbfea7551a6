import { type Block, columnsBlock, flowBlocks, paragraph, stackBlocks, wrapText } from '../../drawing'
import { sawCautions } from './cautions'
import { cutListBlocks } from './cutList'
import { datumBlocks } from './datumSteps'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { COLUMN_AIR_MM, SIZE } from './sheetStyle'
import { aboutText } from './slabPage'

/** The cut list with how to chalk it and what to beware of: as many pages as it takes. */
export function listPages(input: SheetInput): readonly SheetPage[] {
  const { text } = input
  const box = contentBox(input.paper, input.orientation)
  const blocks: readonly Block[] = [
    ...cutListBlocks(input, box.widthMm),
    benchNotes(input, box.widthMm),
    ...noteBlocks(input, box.widthMm),
  ]
  return flowBlocks(blocks, box.heightMm, box.heightMm).map((page, k) => ({
    title: k === 0 ? text.sheetTitleList : text.sheetContinued({ title: text.sheetTitleList }),
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}

function benchNotes(input: SheetInput, widthMm: number): Block {
  const columnMm = (widthMm - COLUMN_AIR_MM) / 2
  return columnsBlock(
    [
      { leftMm: 0, blocks: datumBlocks(input, columnMm) },
      { leftMm: columnMm + COLUMN_AIR_MM, blocks: sawCautions(input.text, columnMm) },
    ],
    9,
  )
}

/** The maker's own note, line by line, so that a long one may go on over pages. */
function noteBlocks({ plan, text }: SheetInput, widthMm: number): readonly Block[] {
  if (plan.note.trim() === '') return []
  const room = { sizeMm: SIZE.body, maxWidthMm: widthMm }
  const lines = plan.note
    .trim()
    .split('\n')
    .flatMap((line) => wrapText(line, room))
  return [
    paragraph(text.sheetNoteHeading, {
      sizeMm: SIZE.heading,
      weight: 'bold',
      widthMm,
      spaceBeforeMm: 7,
      keepWithNext: true,
    }),
    ...lines.map((line) => paragraph(line, { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 1.2 })),
  ]
}
