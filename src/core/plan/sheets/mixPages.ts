import { formatForce, formatHours, formatPlusMinus, formatTemperature, formatVolume } from '../../units'
import { type Block, columnsBlock, flowBlocks, listItem, paragraph, stackBlocks } from '../../drawing'
import type { LayerPlan, PourHeat, ReadingAction } from '../../resin'
import { civilDay, hourText } from '../hourText'
import { pourCautions } from './cautions'
import { batchBlock } from './mixBatch'
import { resinBlocks } from './resinSummary'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { COLUMN_AIR_MM, SIZE, USUAL_COLUMN } from './sheetStyle'
import { aboutText } from './slabPage'

/**
 * The mix card: every batch in a block of its own, under the pour that it belongs to.
 * @returns none while the pour is not worked out
 * Rules: SHT-9.
 */
export function mixPages(input: SheetInput): readonly SheetPage[] {
  const { pour, text } = input
  if (pour === null || pour.heat === null) return []
  const box = contentBox(input.paper, input.orientation)
  const { heat } = pour
  const blocks: readonly Block[] = [
    ...headBlocks(input, box.widthMm),
    ...heat.layers.flatMap((layer, index) => layerBlocks({ input, heat, layer, index }, box.widthMm)),
    endBlock(input, heat, box.widthMm),
    ...cautionBlocks(input, box.widthMm),
  ]
  return flowBlocks(blocks, box.heightMm, box.heightMm).map((page, k) => ({
    title: k === 0 ? text.sheetTitleMix : text.sheetContinued({ title: text.sheetTitleMix }),
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}

/** A figure and its unit stay on one line. */
const unparted = (words: string): string => words.replaceAll(' ', '\u00a0')

const celsius = (input: SheetInput, value: number): string =>
  unparted(formatTemperature(value, input.display))

const whenOf = ({ option }: SheetInput): ((hour: number) => string) => {
  const firstDay = civilDay(option.resin.start.day)
  return (hour) => unparted(hourText(Math.round(hour * 2) / 2, firstDay))
}

function headBlocks(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, option } = input
  const { sheet, room, air } = option.resin
  const roomC = room.kind === 'steady' ? room.roomC : room.meanC
  const words = text.sheetMixProduct({
    product: sheet.name,
    room: celsius(input, roomC),
    air: air === 'still' ? text.sheetMixStill : text.sheetMixFans,
  })
  const body = { sizeMm: SIZE.body, widthMm }
  return [
    ...(sheet.isExample
      ? [paragraph(text.sheetMixExample, { sizeMm: SIZE.heading, weight: 'bold', widthMm })]
      : []),
    paragraph(words, { ...body, spaceBeforeMm: 2 }),
    ...allWords(input).map((all) => paragraph(all, { ...body, weight: 'bold', spaceBeforeMm: 1.6 })),
    paragraph(text.sheetMixEstimate, { ...body, spaceBeforeMm: 1.6 }),
  ]
}

/** What all pours take together, and how sure that is. */
function allWords({ text, resin, optionSure, display }: SheetInput): readonly string[] {
  if (resin === null) return []
  const litres = unparted(formatVolume(resin.mixLitres, display))
  const sd = optionSure?.resinSdLitres ?? null
  return [
    sd === null
      ? text.sheetMixAll({ litres })
      : text.sheetMixAllSure({ litres, sure: unparted(formatPlusMinus(sd, 'volume', display)) }),
  ]
}

interface LayerOnPaper {
  readonly input: SheetInput
  readonly heat: PourHeat
  readonly layer: LayerPlan
  readonly index: number
}

function layerBlocks(of: LayerOnPaper, widthMm: number): readonly Block[] {
  const { input, heat, layer } = of
  const heading = input.text.sheetMixPour({
    number: String(layer.layer),
    of: String(heat.layers.length),
    when: whenOf(input)(layer.startHour),
  })
  const batches = Array.from({ length: layer.batches.count }, (_, batch) =>
    batchBlock(input, layer, batch + 1, widthMm),
  )
  return [
    paragraph(heading, {
      sizeMm: SIZE.heading,
      weight: 'bold',
      widthMm,
      spaceBeforeMm: 6,
      keepWithNext: true,
    }),
    paragraph(layerWords(of), { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 1.6, keepWithNext: true }),
    ...batches,
  ]
}

function layerWords({ input, heat, layer, index }: LayerOnPaper): string {
  const { text, length } = input
  const when = whenOf(input)
  const [least, greatest] = layer.corePeakBandC.map((value) => celsius(input, value))
  const band = least === greatest ? '' : ` (${text.sheetMixBand({ from: least ?? '', to: greatest ?? '' })})`
  const looks = layer.looks.map((look) =>
    text.sheetMixLook({ when: when(look.hour), reading: celsius(input, look.surfaceC) }),
  )
  const isLast = index === heat.layers.length - 1
  return [
    text.sheetMixLevels({
      from: length(layer.fromMm),
      to: length(layer.toMm),
      litres: unparted(formatVolume(layer.need.mixLitres, input.display)),
    }),
    ...(layer.scuffBefore ? [text.sheetMixScuff] : []),
    text.sheetMixHottest({ core: `${celsius(input, layer.corePeakC)}${band}`, when: when(layer.peakHour) }),
    text.sheetMixLooks({ looks: looks.join(', ') }),
    ...(isLast || layer.readyHour === null ? [] : [text.sheetMixNext({ when: when(layer.readyHour) })]),
  ].join(' ')
}

/** What holds for the whole cast: what to mix, readings, bars, what comes after. */
function endBlock(input: SheetInput, heat: PourHeat, widthMm: number): Block {
  const columnMm = (widthMm - COLUMN_AIR_MM) / 2
  return columnsBlock(
    [
      { leftMm: 0, blocks: resinBlocks(input, columnMm, USUAL_COLUMN) },
      {
        leftMm: columnMm + COLUMN_AIR_MM,
        blocks: [
          ...listed(input.text.sheetMixReadings, readingWords(input, heat), columnMm),
          ...listed(input.text.sheetMixHold, holdWords(input), columnMm),
          ...listed(input.text.sheetMixAfter, afterWords(input, heat), columnMm),
        ],
      },
    ],
    8,
  )
}

/** What can hurt, in two columns under its heading. */
function cautionBlocks({ text }: SheetInput, widthMm: number): readonly Block[] {
  const columnMm = (widthMm - COLUMN_AIR_MM) / 2
  const [heading, ...cautions] = pourCautions(text, columnMm, USUAL_COLUMN)
  if (heading === undefined) return []
  const half = Math.ceil(cautions.length / 2)
  return [
    { ...heading, spaceBeforeMm: 7, keepWithNext: true },
    columnsBlock(
      [
        { leftMm: 0, blocks: cautions.slice(0, half) },
        { leftMm: columnMm + COLUMN_AIR_MM, blocks: cautions.slice(half) },
      ],
      USUAL_COLUMN.airMm,
    ),
  ]
}

function listed(heading: string, lines: readonly string[], widthMm: number): readonly Block[] {
  if (lines.length === 0) return []
  return [
    paragraph(heading, { sizeMm: SIZE.heading, weight: 'bold', widthMm, spaceBeforeMm: 4 }),
    ...lines.map((line) =>
      listItem('–', line, { sizeMm: SIZE.body, widthMm, indentMm: 4, spaceBeforeMm: USUAL_COLUMN.airMm }),
    ),
  ]
}

function readingWords(input: SheetInput, { readings }: PourHeat): readonly string[] {
  const { text } = input
  const what: Readonly<Record<ReadingAction['action'], string>> = {
    watch: text.sheetMixWatch,
    'cool-early': text.sheetMixCool,
    'stay-clear': text.sheetMixClear,
  }
  return (readings?.actions ?? []).map(({ action, surfaceC, leadHours }) =>
    text.sheetMixReading({
      surface: celsius(input, surfaceC),
      what: what[action],
      lead: unparted(formatHours(leadHours)),
    }),
  )
}

function holdWords({ pour, text, display, length }: SheetInput): readonly string[] {
  const lifted = (pour?.holdDown ?? []).filter(({ bars }) => bars > 0)
  if (lifted.length === 0) return [text.sheetMixHoldNone]
  return lifted.map(({ pieceName, bars, forcePerBarN, floatsFromMm }) =>
    text.sheetMixHoldPiece({
      piece: pieceName,
      bars: String(bars),
      force: unparted(formatForce(forcePerBarN, display)),
      depth: length(floatsFromMm ?? 0),
    }),
  )
}

function afterWords(input: SheetInput, { demouldHour, flattenHour }: PourHeat): readonly string[] {
  const { text } = input
  const when = whenOf(input)
  return [
    ...(demouldHour === null ? [] : [text.sheetMixDemould({ when: when(demouldHour) })]),
    ...(flattenHour === null ? [] : [text.sheetMixFlatten({ when: when(flattenHour) })]),
  ]
}
