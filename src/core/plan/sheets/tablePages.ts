import {
  type Block,
  type Box,
  type DrawItem,
  type DrawingScale,
  STROKES,
  columnsBlock,
  flowBlocks,
  paragraph,
  stackBlocks,
} from '../../drawing'
import { pourCautions } from './cautions'
import { drawingKey, hatchSample, lineSample, shadeSample } from './drawingKey'
import { layBlocks } from './layList'
import { hasMixCard } from './hasMixCard'
import { gapBlocks, resinBlocks } from './resinSummary'
import { SCALE_STRIP_MM, scaleStrip } from './scaleStrip'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { COLUMN_AIR_MM, type ColumnStyle, LARGE_COLUMN, SIZE, USUAL_COLUMN } from './sheetStyle'
import { aboutText } from './slabPage'
import { tableDrawing, type TableDrawing } from './tableDrawing'

const AIR_MM = 6
/** A scale that stands in while the height of the strip is measured: its text has the most figures. */
const WIDEST_SCALE: DrawingScale = { ratio: 200 }

/**
 * The table as it is put together, its resin, and what to beware of at the pour: on one page where the drawing is as
 * large there as on a page of its own, else on two. With a mix card, resin and pour are told there.
 */
export function tablePages(input: SheetInput): readonly SheetPage[] {
  return [...drawnPages(input), ...layPages(input)]
}

/** So many offcuts are told of beside the drawing; more of them would leave it no room. */
const MOST_BESIDE = 2

const isListApart = ({ coverage }: SheetInput): boolean => coverage.placed.length > MOST_BESIDE

function layPages(input: SheetInput): readonly SheetPage[] {
  if (!isListApart(input)) return []
  const box = contentBox(input.paper, input.orientation)
  return flowBlocks(layBlocks(input, box.widthMm), box.heightMm, box.heightMm).map((page) => ({
    title: input.text.sheetLayHeading,
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}

function drawnPages(input: SheetInput): readonly SheetPage[] {
  const { text } = input
  const box = contentBox(input.paper, input.orientation)
  const whole = drawnTable(input, box)
  if (hasMixCard(input)) return [{ title: text.sheetTitleTable, about: aboutText(input), items: whole.items }]
  const notes = pourNotes(input, box.widthMm, USUAL_COLUMN)
  const shared = drawnTable(input, { ...box, heightMm: box.heightMm - notes.heightMm - AIR_MM })
  const about = aboutText(input)
  if (shared.ratio <= whole.ratio) {
    const notesTop = box.yMm + box.heightMm - notes.heightMm
    const items = [...shared.items, ...notes.draw([box.xMm, notesTop])]
    return [{ title: text.sheetTitleTableAndResin, about, items }]
  }
  return [
    { title: text.sheetTitleTable, about, items: whole.items },
    {
      title: text.sheetTitleResin,
      about,
      items: pourNotes(input, box.widthMm, LARGE_COLUMN).draw([box.xMm, box.yMm + AIR_MM]),
    },
  ]
}

interface DrawnTable {
  readonly items: readonly DrawItem[]
  /** Infinite when no scale fits. */
  readonly ratio: number
}

function drawnTable(input: SheetInput, box: Box): DrawnTable {
  const stripMm = strip(input, box.widthMm, WIDEST_SCALE).heightMm
  const room: Box = { ...box, heightMm: box.heightMm - stripMm - AIR_MM }
  const drawing: TableDrawing | null = room.heightMm > 0 ? tableDrawing(input, room) : null
  if (drawing === null) {
    const style = { sizeMm: SIZE.body, widthMm: box.widthMm }
    return {
      items: paragraph(input.text.sheetTooLargeToDraw, style).draw([box.xMm, box.yMm]),
      ratio: Infinity,
    }
  }
  const below = { xMm: box.xMm, yMm: box.yMm + box.heightMm - stripMm }
  return {
    items: [...drawing.items, ...stackBlocks([strip(input, box.widthMm, drawing.scale)], below)],
    ratio: drawing.scale.ratio,
  }
}

/** Scale bar on the left; on the right the key and where wood is short. */
function strip(input: SheetInput, widthMm: number, scale: DrawingScale): Block {
  const { text, coverage } = input
  const leftMm = SCALE_STRIP_MM + COLUMN_AIR_MM
  const rightMm = widthMm - leftMm
  const laid = { sample: shadeSample, text: text.sheetKeyLaid }
  const entries = [
    { sample: lineSample(STROKES.outline), text: text.sheetKeyEdge },
    { sample: hatchSample, text: text.sheetKeyResin },
    { sample: lineSample(STROKES.finished), text: text.sheetKeyFinished },
    ...(coverage.placed.length === 0 ? [] : [laid]),
  ]
  const caution = paragraph(text.sheetTableCaution, {
    sizeMm: SIZE.note,
    weight: 'bold',
    widthMm: rightMm,
    spaceBeforeMm: 2.4,
  })
  return columnsBlock(
    [
      { leftMm: 0, blocks: [scaleStrip(input, scale)] },
      {
        leftMm,
        blocks: [
          drawingKey(entries, rightMm),
          ...gapBlocks(input, rightMm),
          ...(isListApart(input) ? [] : layBlocks(input, rightMm)),
          caution,
        ],
      },
    ],
    2,
  )
}

function pourNotes(input: SheetInput, widthMm: number, style: ColumnStyle): Block {
  const columnMm = (widthMm - COLUMN_AIR_MM) / 2
  return columnsBlock(
    [
      { leftMm: 0, blocks: resinBlocks(input, columnMm, style) },
      { leftMm: columnMm + COLUMN_AIR_MM, blocks: pourCautions(input.text, columnMm, style) },
    ],
    0,
  )
}
