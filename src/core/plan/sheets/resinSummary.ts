import { formatMass, formatPercent, formatPlusMinus, formatVolume } from '../../units'
import { type Block, STROKES, type TableColumn, paragraph, tableRow } from '../../drawing'
import { type SheetInput, sideName } from './sheetInput'
import { type ColumnStyle, SIZE } from './sheetStyle'

/** Resin by what it fills, what is lost, and what to mix. Rules: SHT-7. */
export function resinBlocks(input: SheetInput, widthMm: number, style: ColumnStyle): readonly Block[] {
  const { text, resin } = input
  const heading = paragraph(text.sheetResinHeading, { sizeMm: style.headingMm, weight: 'bold', widthMm })
  const say = (words: string): Block =>
    paragraph(words, { sizeMm: style.bodyMm, widthMm, spaceBeforeMm: style.airMm })
  if (resin === null) return [heading, say(text.sheetResinBlocked)]
  if (resin.gapLitres === 0) return [heading, say(text.sheetResinNone)]
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.5 },
    { widthMm: widthMm * 0.5, anchor: 'end' },
  ]
  const row = (label: string, figure: string): Block =>
    tableRow(columns, [label, figure], {
      sizeMm: style.bodyMm,
      spaceBeforeMm: 0,
      padMm: style.airMm * 0.6,
      ruleBelow: STROKES.thin,
    })
  return [
    heading,
    { heightMm: 0, spaceBeforeMm: style.airMm / 2, draw: () => [] },
    ...figureRows(input, row),
    tableRow(columns, [text.sheetResinMix, formatVolume(resin.mixLitres, input.display)], {
      sizeMm: style.totalMm,
      weight: 'bold',
      spaceBeforeMm: 0,
      padMm: style.airMm * 0.9,
      ruleBelow: STROKES.rule,
    }),
    ...sureRow(input, row),
    ...(resin.mixKg === null ? [] : [row(text.sheetResinKg, formatMass(resin.mixKg, input.display))]),
    say(text.sheetResinEstimate),
  ]
}

/** How sure the mix is, as far as the photo goes. */
function sureRow(
  { text, display, optionSure }: SheetInput,
  row: (label: string, figure: string) => Block,
): readonly Block[] {
  const sd = optionSure?.resinSdLitres ?? null
  return sd === null ? [] : [row(text.sheetResinSure, formatPlusMinus(sd, 'volume', display))]
}

function figureRows(
  { text, resin, option, display, length }: SheetInput,
  row: (label: string, figure: string) => Block,
): readonly Block[] {
  if (resin === null) return []
  const volume = (litres: number): string => formatVolume(litres, display)
  const loss = { share: formatPercent(option.resin.lossFraction, { decimals: 0 }) }
  const parts = [
    [text.sheetResinEdges, resin.edgeGapLitres],
    [text.sheetResinVoids, resin.voidLitres],
    [text.sheetResinFlood, resin.floodLitres],
    [text.sheetResinClearance, resin.clearanceLitres],
    [text.sheetResinUnder, resin.underLitres],
  ] as const
  const { name, isExample } = option.resin.sheet
  const product = isExample ? text.sheetResinExample({ name }) : name
  return [
    ...(product === '' ? [] : [row(text.sheetResinProduct, product)]),
    row(text.sheetResinCast, length(resin.castThicknessMm)),
    ...parts.filter(([, litres]) => litres > 0).map(([label, litres]) => row(label, volume(litres))),
    row(resin.isMeasured ? text.sheetResinMeasured : text.sheetResinGap, volume(resin.gapLitres)),
    row(text.sheetResinLoss(loss), volume(resin.mixLitres - resin.gapLitres)),
  ]
}

/** Where wood is short along the sides, and how wide kept edges are. */
export function gapBlocks({ text, coverage, length }: SheetInput, widthMm: number): readonly Block[] {
  const gaps = coverage.sideGaps.map(({ side, greatestDepthMm, lengthMm }) =>
    text.sheetGapSide({
      side: sideName(text, side),
      depth: length(greatestDepthMm),
      length: length(lengthMm),
    }),
  )
  const kept = coverage.keptEdges.map(({ side, leastWidthMm, leastAtMm, meanWidthMm }) =>
    text.sheetKeptEdge({
      side: sideName(text, side),
      least: length(leastWidthMm),
      at: length(leastAtMm),
      mean: length(meanWidthMm),
    }),
  )
  return [
    paragraph(text.sheetGapsHeading, { sizeMm: SIZE.heading, weight: 'bold', widthMm, spaceBeforeMm: 5 }),
    ...[...(gaps.length === 0 ? [text.sheetGapNone] : gaps), ...kept].map((words) =>
      paragraph(words, { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 1.8 }),
    ),
  ]
}
