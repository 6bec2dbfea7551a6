import { formatMass, formatNumber, formatVolume } from '../../units'
import {
  type Block,
  CAP_HEIGHT,
  type DrawItem,
  paragraph,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
  textItem,
  textWidthMm,
} from '../../drawing'
import type { LayerPlan } from '../../resin'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

const PAD_MM = 3
const TICK_MM = 5
/** What is written in by hand, mm of line. */
const WRITE_MM = 26
const COLUMN_SHARES = [0.34, 0.33, 0.33]

/** One batch: what is weighed, in large figures, with boxes to tick and lines to write on. Rules: SHT-9. */
export function batchBlock(input: SheetInput, layer: LayerPlan, number: number, widthMm: number): Block {
  const innerMm = widthMm - 2 * PAD_MM
  const body = bodyBlocks(input, layer, number, innerMm)
  const bodyMm = body.reduce((sum, block, k) => sum + block.heightMm + (k === 0 ? 0 : block.spaceBeforeMm), 0)
  const heightMm = bodyMm + TICK_MM + 3 * PAD_MM
  return {
    heightMm,
    spaceBeforeMm: 3.5,
    draw: ([x, y]) => [
      frame(x, y, widthMm, heightMm),
      ...stackBlocks(body, { xMm: x + PAD_MM, yMm: y + PAD_MM }),
      ...handRow(input, x + PAD_MM, y + heightMm - PAD_MM - TICK_MM),
    ],
  }
}

function bodyBlocks(input: SheetInput, layer: LayerPlan, number: number, widthMm: number): readonly Block[] {
  const { text } = input
  const { batches } = layer
  const heading = text.sheetMixBatch({
    pour: String(layer.layer),
    number: String(number),
    of: String(batches.count),
  })
  const columns = COLUMN_SHARES.map((share, k): TableColumn => ({
    widthMm: share * widthMm,
    ...(k === 0 ? {} : { anchor: 'end' }),
  }))
  const row = (cells: readonly string[], isTotal = false): Block =>
    tableRow(columns, cells, {
      sizeMm: SIZE.total,
      weight: isTotal ? 'bold' : 'regular',
      spaceBeforeMm: 0,
      padMm: 1.1,
      ruleBelow: STROKES.thin,
    })
  const minutes = batches.workingMinutes
  const workable =
    minutes === null
      ? text.sheetMixWorkableUnknown
      : text.sheetMixWorkable({ minutes: formatNumber(Math.floor(minutes)) })
  return [
    tableRow(columns, [heading, text.sheetMixByWeight, text.sheetMixByVolume], {
      sizeMm: SIZE.figure,
      weight: 'bold',
      spaceBeforeMm: 0,
      padMm: 0.6,
    }),
    ...partRows(input, layer).map((cells) => row(cells)),
    row([text.sheetMixTogether, ...amounts(input, batches.kgEach, batches.litresEach)], true),
    paragraph(workable, { sizeMm: SIZE.note, widthMm, spaceBeforeMm: 1.6 }),
  ]
}

function partRows(input: SheetInput, { batches }: LayerPlan): readonly (readonly string[])[] {
  const { text } = input
  const { partsEach, dye } = batches
  return [
    [text.sheetMixResin, ...amounts(input, partsEach.resinKg, partsEach.resinLitres)],
    [text.sheetMixHardener, ...amounts(input, partsEach.hardenerKg, partsEach.hardenerLitres)],
    ...(dye === null ? [] : [[text.sheetMixDye, ...dyeAmounts(input, dye)]]),
  ]
}

function dyeAmounts(
  { option, text }: SheetInput,
  dye: { readonly grams: number; readonly drops: number | null },
): readonly string[] {
  if (option.resin.sheet.isExample) return [text.sheetMixLeftOut, text.sheetMixLeftOut]
  const drops = dye.drops === null ? '' : text.sheetMixDrops({ drops: formatNumber(dye.drops) })
  return [`${formatNumber(dye.grams, { decimals: 1 })}\u00a0g`, drops]
}

const unparted = (words: string): string => words.replaceAll(' ', '\u00a0')

/** Amounts by an invented product sheet could be weighed by mistake: they stay off the paper. */
function amounts(
  { display, text, option }: SheetInput,
  kg: number | null,
  litres: number | null,
): readonly string[] {
  if (option.resin.sheet.isExample) return [text.sheetMixLeftOut, text.sheetMixLeftOut]
  return [
    kg === null ? text.sheetMixNotKnown : unparted(formatMass(kg, display)),
    litres === null ? text.sheetMixNotKnown : unparted(formatVolume(litres, display)),
  ]
}

function frame(x: number, y: number, widthMm: number, heightMm: number): DrawItem {
  const [right, bottom] = [x + widthMm, y + heightMm]
  return {
    kind: 'polygon',
    rings: [
      [
        [x, y],
        [right, y],
        [right, bottom],
        [x, bottom],
      ],
    ],
    stroke: STROKES.finished,
    fill: null,
  }
}

/** Boxes to tick, and lines for the hour and the hottest reading: what the log is written from. */
function handRow({ text }: SheetInput, left: number, top: number): readonly DrawItem[] {
  const baseline = top + (TICK_MM + CAP_HEIGHT * SIZE.note) / 2
  const bottom = top + TICK_MM
  let x = left
  const ticks = text.sheetMixTicks.flatMap((word): readonly DrawItem[] => {
    const at = x
    x += TICK_MM + 1.6 + textWidthMm(word, SIZE.note) + 5
    return [
      frame(at, top, TICK_MM, TICK_MM),
      textItem(word, [at + TICK_MM + 1.6, baseline], { sizeMm: SIZE.note }),
    ]
  })
  const lines = [text.sheetMixPouredAt, text.sheetMixHottestRead].flatMap((word): readonly DrawItem[] => {
    const at = x
    const from = at + textWidthMm(word, SIZE.note) + 1.6
    x = from + WRITE_MM + 5
    return [
      textItem(word, [at, baseline], { sizeMm: SIZE.note }),
      {
        kind: 'segments',
        segments: [
          [
            [from, bottom],
            [from + WRITE_MM, bottom],
          ],
        ],
        stroke: STROKES.thin,
      },
    ]
  })
  return [...ticks, ...lines]
}
