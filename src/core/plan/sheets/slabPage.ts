import {
  type Block,
  type Box,
  type DrawingScale,
  STROKES,
  columnsBlock,
  paragraph,
  stackBlocks,
} from '../../drawing'
import { arrowSample, drawingKey, hatchSample, lineSample, markSample } from './drawingKey'
import { SCALE_STRIP_MM, scaleStrip } from './scaleStrip'
import { contentBox, type SheetPage } from './sheetFrame'
import { type SheetInput, sureLengthText } from './sheetInput'
import { COLUMN_AIR_MM, SIZE } from './sheetStyle'
import { type SlabDrawing, slabDrawing } from './slabDrawing'
import { verdictText } from './verdictText'

export interface SlabPage extends SheetPage {
  /** Null when no usual scale fits the paper. */
  readonly scale: DrawingScale | null
}

const AIR_MM = 4
/** A scale that stands in while the height of the strip is measured: its text has the most figures. */
const WIDEST_SCALE: DrawingScale = { ratio: 200 }

/** The slab with its cuts: verdict, sizes, drawing, scale bar and key. */
export function slabPage(input: SheetInput): SlabPage {
  const box = contentBox(input.paper, input.orientation)
  const top = topBlocks(input, box.widthMm)
  const topMm = heightOf(top)
  const stripMm = heightOf([strip(input, box.widthMm, { scale: WIDEST_SCALE, stationsShown: true })])
  const room: Box = {
    ...box,
    yMm: box.yMm + topMm + AIR_MM,
    heightMm: box.heightMm - topMm - stripMm - 2 * AIR_MM,
  }
  const drawing = slabDrawing(input, room)
  const { text } = input
  const below = { xMm: box.xMm, yMm: box.yMm + box.heightMm - stripMm }
  const body =
    drawing === null
      ? paragraph(text.sheetTooLargeToDraw, { sizeMm: SIZE.body, widthMm: box.widthMm }).draw([
          box.xMm,
          room.yMm,
        ])
      : [...drawing.items, ...stackBlocks([strip(input, box.widthMm, drawing)], below)]
  return {
    title: text.sheetTitleCuts,
    about: aboutText(input),
    items: [...stackBlocks(top, box), ...body],
    scale: drawing?.scale ?? null,
  }
}

const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block, k) => sum + block.heightMm + (k === 0 ? 0 : block.spaceBeforeMm), 0)

/** What every page belongs to: plan, option, slab. */
export function aboutText({ plan, option, slab }: Pick<SheetInput, 'plan' | 'option' | 'slab'>): string {
  const optionName = plan.options.length > 1 ? option.name : ''
  return [plan.name, optionName, slab.name].filter((name) => name !== '').join(' · ')
}

function topBlocks(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, length, slabSure, footprint, shape, option, slab, display } = input
  const top = text.sheetSizeByThickness({
    length: length(footprint.finishedLengthMm),
    width: length(footprint.finishedWidthMm),
    thickness: length(option.table.thicknessMm),
  })
  const face = {
    length: sureLengthText(shape.lengthMm, slabSure?.lengthSdMm, display),
    width: sureLengthText(shape.widthMm, slabSure?.widthSdMm, display),
  }
  const wood =
    slab.thicknessMm === null
      ? text.sheetSizeThicknessUnknown(face)
      : text.sheetSizeByThickness({ ...face, thickness: length(slab.thicknessMm) })
  const kerfs = [...new Set(input.pieces.cuts.map(({ kerfMm }) => length(kerfMm)))]
  const facts = [
    `${text.sheetFactFinished}: ${top}`,
    `${text.sheetFactSlab}: ${wood}`,
    ...(kerfs.length === 0 ? [] : [`${text.sheetFactKerf}: ${kerfs.join(', ')}`]),
  ]
  return [
    paragraph(verdictText(input), {
      sizeMm: SIZE.verdict,
      weight: 'bold',
      widthMm,
    }),
    paragraph(facts.join('   ·   '), { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 1.6 }),
  ]
}

/** Scale bar on the left, key and reading help on the right. */
function strip(
  input: SheetInput,
  widthMm: number,
  drawing: Pick<SlabDrawing, 'scale' | 'stationsShown'>,
): Block {
  const { text } = input
  const rightMm = widthMm - SCALE_STRIP_MM - COLUMN_AIR_MM
  const entries = [
    { sample: lineSample(STROKES.outline), text: text.sheetKeyEdge },
    { sample: hatchSample, text: text.sheetKeyVoid },
    { sample: lineSample(STROKES.cut), text: text.sheetKeyCut },
    { sample: lineSample(STROKES.finished), text: text.sheetKeyFinished },
    { sample: lineSample(STROKES.blank), text: text.sheetKeyBlank },
    { sample: arrowSample(STROKES.datum), text: text.sheetKeyDatum },
    ...(input.marks.length === 0 ? [] : [{ sample: markSample, text: text.sheetKeyMark }]),
  ]
  const help = paragraph(drawing.stationsShown ? text.sheetKeyStations : text.sheetKeyStationsInList, {
    sizeMm: SIZE.note,
    widthMm: rightMm,
    spaceBeforeMm: 2,
  })
  const caution = paragraph(text.sheetSlabCaution, {
    sizeMm: SIZE.note,
    weight: 'bold',
    widthMm: rightMm,
    spaceBeforeMm: 1.6,
  })
  const key = [drawingKey(entries, rightMm), help, caution]
  return columnsBlock(
    [
      { leftMm: 0, blocks: [scaleStrip(input, drawing.scale)] },
      { leftMm: SCALE_STRIP_MM + COLUMN_AIR_MM, blocks: key },
    ],
    2,
  )
}
