import { formatMass, formatNumber } from '../../units'
import {
  type Block,
  type Box,
  paragraph,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
} from '../../drawing'
import { revisionMark } from './revisionMark'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { aboutText } from './slabPage'
import { tableDrawing } from './tableDrawing'
import { pairOfWritingLines, writingLine } from './writingLine'

const AIR_MM = 5

function approvalRows(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, length, footprint, option, slab } = input
  const columns: readonly TableColumn[] = [{ widthMm: widthMm * 0.4 }, { widthMm: widthMm * 0.6 }]
  const size = text.sheetSizeByThickness({
    length: length(footprint.finishedLengthMm),
    width: length(footprint.finishedWidthMm),
    thickness: length(option.table.thicknessMm),
  })
  const rows = [
    [text.sheetApprovalSize, size],
    [text.sheetApprovalTolerance, ''],
    [text.sheetApprovalWood, slab.species ?? ''],
    [text.sheetApprovalResin, ''],
    [text.sheetApprovalFinish, ''],
  ]
  return rows.map((cells) =>
    tableRow(columns, cells, { sizeMm: SIZE.body, spaceBeforeMm: 0, padMm: 1.4, ruleBelow: STROKES.thin }),
  )
}

const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block, k) => sum + block.heightMm + (k === 0 ? 0 : block.spaceBeforeMm), 0)

/** What the client signs: the drawing with its sizes, what is agreed, lines for both names. Rules: SHT-12. */
export function approvalPage(input: SheetInput): SheetPage {
  const { text, plan } = input
  const box = contentBox(input.paper, input.orientation)
  const lead = paragraph(text.sheetApprovalLead({ name: plan.name }), {
    sizeMm: SIZE.heading,
    weight: 'bold',
    widthMm: box.widthMm,
  })
  const say = { sizeMm: SIZE.body, widthMm: box.widthMm, spaceBeforeMm: 3 }
  const rest: readonly Block[] = [
    ...approvalRows(input, box.widthMm),
    paragraph(text.sheetApprovalNature, say),
    paragraph(text.sheetApprovalChange({ mark: revisionMark(plan) }), { ...say, weight: 'bold' }),
    pairOfWritingLines([text.sheetApprovalClient, text.sheetApprovalMaker], box.widthMm),
  ]
  const restMm = heightOf(rest)
  const room: Box = {
    ...box,
    yMm: box.yMm + lead.heightMm + AIR_MM,
    heightMm: box.heightMm - lead.heightMm - restMm - 2 * AIR_MM,
  }
  const drawing = room.heightMm > 0 ? tableDrawing(input, room) : null
  return {
    title: text.sheetTitleApproval,
    about: aboutText(input),
    items: [
      ...stackBlocks([lead], box),
      ...(drawing?.items ?? []),
      ...stackBlocks(rest, { xMm: box.xMm, yMm: box.yMm + box.heightMm - restMm }),
    ],
  }
}

const percent = (fraction: number): string => `${formatNumber(fraction * 100)}\u00a0%`

/** How the client keeps the table. Rules: SHT-12. */
export function carePage(input: SheetInput): SheetPage {
  const { text, option, plan, topKg } = input
  const box = contentBox(input.paper, input.orientation)
  const widthMm = Math.min(box.widthMm, 190)
  const { dryHumidity, dampHumidity } = option.room
  const mass = topKg === null ? null : formatMass(topKg, input.display).replaceAll(' ', '\u00a0')
  const parts = [
    [text.sheetCareHeat, text.sheetCareHeatText],
    [text.sheetCareSun, text.sheetCareSunText],
    [text.sheetCareAir, text.sheetCareAirText({ dry: percent(dryHumidity), damp: percent(dampHumidity) })],
    [text.sheetCareClean, text.sheetCareCleanText],
    [text.sheetCareScratch, text.sheetCareScratchText],
    [text.sheetCareMove, mass === null ? text.sheetCareMoveUnknown : text.sheetCareMoveText({ mass })],
  ] as const
  const blocks: readonly Block[] = [
    paragraph(text.sheetCareLead({ name: plan.name }), { sizeMm: SIZE.heading, weight: 'bold', widthMm }),
    ...parts.flatMap(([heading, words], k) => [
      paragraph(heading, { sizeMm: SIZE.heading, weight: 'bold', widthMm, spaceBeforeMm: 4.5 }),
      paragraph(words, { sizeMm: SIZE.heading, widthMm, spaceBeforeMm: 1.6 }),
      ...(k === 0 ? [writingLine(text.sheetCareHeatLimit, widthMm / 2)] : []),
    ]),
  ]
  return { title: text.sheetTitleCare, about: aboutText(input), items: stackBlocks(blocks, box) }
}
