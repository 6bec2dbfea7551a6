import { ringBounds } from '../../geometry'
import {
  type Block,
  type Box,
  centredText,
  centredView,
  columnsBlock,
  type DrawItem,
  type DrawingView,
  hatchRegion,
  onSheet,
  paragraph,
  pickScale,
  type Segment,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
} from '../../drawing'
import { datumBlocks } from './datumSteps'
import { arrowSample, drawingKey, hatchSample, lineSample, markSample } from './drawingKey'
import { SCALE_STRIP_MM, scaleStrip } from './scaleStrip'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { COLUMN_AIR_MM, SIZE } from './sheetStyle'
import { slabLabels } from './slabLabels'
import { datumLine, HATCH, ringOnSheet } from './slabLines'
import { aboutText } from './slabPage'
import { type SlabTape, slabTapes } from './slabTapes'

const AIR_MM = 5
const DATUM_PAST_MM = 6
/** Above the drawing, for the stations' numbers. */
const NUMBER_MM = 8
const FIRST_COLUMN_MM = 32
/** Air over and under a row to be written in by hand, mm. */
const WRITE_PAD_MM = 2
/** Of the drawing at the least; with less, how to chalk the datum stays on the cut list. */
const LEAST_DRAWING_MM = 60

/** The slab's edge by stations off the datum, to be taped on the wood before the first cut. Rules: SHT-11. */
export function slabCheckPage(input: SheetInput): SheetPage {
  const { text } = input
  const box = contentBox(input.paper, input.orientation)
  const tapes = slabTapes(input.shape.outline, input.display)
  const lead = paragraph(text.sheetSlabLead, { sizeMm: SIZE.body, weight: 'bold', widthMm: box.widthMm })
  const bottomMm = heightOf(below(input, tapes, box.widthMm, 200))
  const top = box.yMm + lead.heightMm + AIR_MM
  const room: Box = { ...box, yMm: top, heightMm: box.heightMm - lead.heightMm - bottomMm - 2 * AIR_MM }
  const drawing = checkDrawing(input, tapes, room)
  const rest = below(input, tapes, box.widthMm, drawing?.view.scale.ratio ?? 200)
  const body =
    drawing === null
      ? paragraph(text.sheetTooLargeToDraw, { sizeMm: SIZE.body, widthMm: box.widthMm }).draw([box.xMm, top])
      : drawing.items
  return {
    title: text.sheetTitleSlab,
    about: aboutText(input),
    items: [
      ...stackBlocks([lead], box),
      ...body,
      ...stackBlocks(rest, { xMm: box.xMm, yMm: box.yMm + box.heightMm - bottomMm }),
    ],
  }
}

const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block, k) => sum + block.heightMm + (k === 0 ? 0 : block.spaceBeforeMm), 0)

function below(
  input: SheetInput,
  tapes: readonly SlabTape[],
  widthMm: number,
  ratio: number,
): readonly Block[] {
  const { text } = input
  const rightMm = widthMm - SCALE_STRIP_MM - COLUMN_AIR_MM
  const note = { sizeMm: SIZE.note, widthMm: rightMm, spaceBeforeMm: 1.6 }
  const key = drawingKey(
    [
      { sample: lineSample(STROKES.outline), text: text.sheetKeyEdge },
      { sample: hatchSample, text: text.sheetKeyVoid },
      { sample: lineSample(STROKES.helper), text: text.sheetSlabKeyStation },
      { sample: arrowSample(STROKES.datum), text: text.sheetKeyDatum },
      ...(input.marks.length === 0 ? [] : [{ sample: markSample, text: text.sheetKeyMark }]),
    ],
    rightMm,
  )
  const notes = [
    key,
    paragraph(text.sheetSlabBeyond, note),
    paragraph(text.sheetSlabTurn, { ...note, weight: 'bold' }),
  ]
  const steps = datumBlocks(input, widthMm).slice(0, -2)
  const roomy = contentBox(input.paper, input.orientation).heightMm > 2 * LEAST_DRAWING_MM + 90
  return [
    ...tapeTable(input, tapes, widthMm),
    columnsBlock(
      [
        { leftMm: 0, blocks: [scaleStrip(input, { ratio })] },
        { leftMm: SCALE_STRIP_MM + COLUMN_AIR_MM, blocks: notes },
      ],
      AIR_MM,
    ),
    ...(roomy ? [columnsBlock([{ leftMm: 0, blocks: steps }], AIR_MM)] : []),
  ]
}

/** Stations side by side, with lines to write what the tape says. */
function tapeTable(input: SheetInput, tapes: readonly SlabTape[], widthMm: number): readonly Block[] {
  const { text, length } = input
  const figureMm = (widthMm - FIRST_COLUMN_MM) / Math.max(1, tapes.length)
  const columns: readonly TableColumn[] = [
    { widthMm: FIRST_COLUMN_MM },
    ...tapes.map((): TableColumn => ({ widthMm: figureMm, anchor: 'end' })),
  ]
  const row = (label: string, figures: readonly string[], isHead = false, padMm = 1.1): Block =>
    tableRow(columns, [label, ...figures], {
      sizeMm: SIZE.body,
      spaceBeforeMm: 0,
      padMm,
      weight: isHead ? 'bold' : 'regular',
      ruleBelow: isHead ? STROKES.rule : STROKES.thin,
    })
  const blank = tapes.map(() => '')
  return [
    row(
      text.sheetSlabStation,
      tapes.map((_, k) => String(k + 1)),
      true,
    ),
    row(
      text.sheetSlabAlong,
      tapes.map(({ alongMm }) => length(alongMm)),
    ),
    row(
      text.sheetSlabLeft,
      tapes.map(({ leftAtMm }) => length(-leftAtMm)),
    ),
    row(text.sheetSlabTaped, blank, false, WRITE_PAD_MM),
    row(
      text.sheetSlabRight,
      tapes.map(({ rightAtMm }) => length(rightAtMm)),
    ),
    row(text.sheetSlabTaped, blank, false, WRITE_PAD_MM),
  ]
}

function checkDrawing(
  input: SheetInput,
  tapes: readonly SlabTape[],
  box: Box,
): { readonly items: readonly DrawItem[]; readonly view: DrawingView } | null {
  const { shape, marks, datumLengthMm } = input
  const room: Box = {
    xMm: box.xMm + DATUM_PAST_MM,
    yMm: box.yMm + NUMBER_MM,
    widthMm: box.widthMm - 2 * DATUM_PAST_MM,
    heightMm: box.heightMm - NUMBER_MM,
  }
  if (room.heightMm <= 0) return null
  const bounds = ringBounds([...shape.outline, ...marks.map(({ at }) => at), [0, 0], [datumLengthMm ?? 0, 0]])
  const size = { widthMm: bounds.maxX - bounds.minX, heightMm: bounds.maxY - bounds.minY }
  const scale = pickScale(size, room, input.display.system)
  if (scale === null) return null
  const view = centredView(scale, bounds, room)
  const datum = datumLine(view, bounds, DATUM_PAST_MM)
  const top = onSheet(view, [0, bounds.minY])[1]
  const stations = tapes.map(({ alongMm, rightAtMm }): Segment => [
    [onSheet(view, [alongMm, 0])[0], top - 1.5],
    onSheet(view, [alongMm, Math.max(rightAtMm, 0)]),
  ])
  const numbers = stations.map(([[x]], k) =>
    centredText(String(k + 1), [x, top - 5], { sizeMm: SIZE.figure, weight: 'bold', plate: true }),
  )
  const voids = shape.voids.map(({ ring }) => ({ outer: ringOnSheet(view, ring), holes: [] }))
  const lines: readonly DrawItem[] = [
    { kind: 'segments', segments: voids.flatMap((hole) => hatchRegion(hole, HATCH)), stroke: STROKES.hatch },
    { kind: 'polygon', rings: voids.map(({ outer }) => outer), stroke: STROKES.opening, fill: null },
    { kind: 'segments', segments: stations, stroke: STROKES.helper },
    { kind: 'polygon', rings: [ringOnSheet(view, shape.outline)], stroke: STROKES.outline, fill: null },
    ...datum.items,
    ...numbers,
  ]
  const bare = { ...input, pieces: { ...input.pieces, cuts: [], pieces: [] } }
  const labels = slabLabels(bare, view, { taken: lines, datumEnds: datum.ends, within: box })
  return { items: [...lines, ...labels], view }
}
