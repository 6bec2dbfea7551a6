import {
  type Block,
  CAP_HEIGHT,
  type DrawItem,
  STROKES,
  type TableColumn,
  centredText,
  paragraph,
  stackBlocks,
  tableRow,
  textItem,
  textWidthMm,
} from '../../drawing'
import { acuteAngle, type CheckDistance, type StationPoint } from '../../cuts'
import type { SetOutCut } from '../tableResult'
import { type SheetInput, sideName } from './sheetInput'
import { SIZE } from './sheetStyle'
import { endName, offsetText } from './stationText'

/** Shares of the width: number, side, a along, a off, b along, b off, length, check. */
const COLUMN_SHARES = [0.055, 0.105, 0.115, 0.145, 0.115, 0.145, 0.11, 0.21]
const TAG_RADIUS_MM = 3.1
/** Air over and under what is said of one cut, mm. */
const BLOCK_PAD_MM = 2.4
const TICK_BOX_MM = 4
/** Marks that each end is taped from beside its station: two fix a place. */
const TAPES_SHOWN = 2

/** The cuts in order of work, each with what sets it out, what checks it and what falls off. Rules: SHT-4. */
export function cutListBlocks(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, pieces } = input
  if (pieces.cuts.length === 0) return [paragraph(text.sheetListNone, { sizeMm: SIZE.body, widthMm })]
  const columns = COLUMN_SHARES.map((share): TableColumn => ({ widthMm: share * widthMm }))
  return [...headRows(input, columns), ...pieces.cuts.map((cut) => cutBlock(cut, input, columns, widthMm))]
}

function headRows({ text }: SheetInput, columns: readonly TableColumn[]): readonly Block[] {
  const style = { sizeMm: SIZE.note, keepWithNext: true } as const
  const groups = [text.sheetListCut, '', text.sheetListFirstEnd, '', text.sheetListSecondEnd, '']
  const names = ['', '', text.sheetListAlong, text.sheetListOffset, text.sheetListAlong, text.sheetListOffset]
  const last = [text.sheetListLength, text.sheetListCheck]
  return [
    tableRow(
      merged(columns),
      groups.filter((group) => group !== ''),
      {
        ...style,
        weight: 'bold',
        spaceBeforeMm: 2,
      },
    ),
    tableRow(columns, [...names, ...last], {
      ...style,
      spaceBeforeMm: 0.6,
      padMm: 0.8,
      ruleBelow: STROKES.rule,
    }),
  ]
}

/** Columns of the group heads: two and two. */
function merged(columns: readonly TableColumn[]): readonly TableColumn[] {
  return [0, 2, 4].map((k) => ({
    widthMm: (columns[k]?.widthMm ?? 0) + (columns[k + 1]?.widthMm ?? 0),
  }))
}

/** What is said of one cut, kept together: its figures, how to read them, and boxes to be ticked at the bench. */
function cutBlock(
  cut: SetOutCut,
  input: SheetInput,
  columns: readonly TableColumn[],
  widthMm: number,
): Block {
  const indentMm = columns[0]?.widthMm ?? 0
  const boxes = tickBoxes(input)
  const note = { sizeMm: SIZE.note, widthMm: widthMm - indentMm - boxes.widthMm }
  const tapes = cutTapes(cut, input)
  const body: readonly Block[] = [
    tableRow(columns.slice(1), figureCells(cut, input), { sizeMm: SIZE.figure, spaceBeforeMm: 0 }),
    paragraph(cutNotes(cut, input), { ...note, spaceBeforeMm: 1.6 }),
    ...(tapes === '' ? [] : [paragraph(tapes, { ...note, spaceBeforeMm: 0.8 })]),
  ]
  const boxesTop = BLOCK_PAD_MM + (body[0]?.heightMm ?? 0) + 1.2
  const bodyMm = body.reduce((sum, block) => sum + block.heightMm + block.spaceBeforeMm, 0)
  const heightMm = Math.max(bodyMm + 2 * BLOCK_PAD_MM, boxesTop + TICK_BOX_MM + BLOCK_PAD_MM)
  return {
    heightMm,
    spaceBeforeMm: 0,
    draw: ([x, y]) => [
      ...tag(cut.number, x + TAG_RADIUS_MM, y + BLOCK_PAD_MM + (CAP_HEIGHT * SIZE.figure) / 2),
      ...stackBlocks(body, { xMm: x + indentMm, yMm: y + BLOCK_PAD_MM }),
      ...boxes.draw(x + widthMm, y + boxesTop),
      {
        kind: 'segments',
        segments: [
          [
            [x, y + heightMm],
            [x + widthMm, y + heightMm],
          ],
        ],
        stroke: STROKES.thin,
      },
    ],
  }
}

const tag = (number: number, x: number, y: number): readonly DrawItem[] => [
  { kind: 'circle', centre: [x, y], radiusMm: TAG_RADIUS_MM, stroke: null, fill: 'black' },
  centredText(String(number), [x, y], { sizeMm: SIZE.figure, weight: 'bold', reversed: true }),
]

/** Boxes to be ticked at the bench, right-aligned. */
function tickBoxes({ text }: SheetInput): {
  readonly widthMm: number
  readonly draw: (right: number, top: number) => readonly DrawItem[]
} {
  const words = [text.sheetTickChecked, text.sheetTickCut]
  const widths = words.map((word) => textWidthMm(word, SIZE.note) + TICK_BOX_MM + 1.4 + 4)
  const widthMm = widths.reduce((sum, width) => sum + width, 0)
  return {
    widthMm,
    draw: (right, top) => {
      let x = right - widthMm + 4
      return words.flatMap((word, k): readonly DrawItem[] => {
        const left = x
        x += widths[k] ?? 0
        const [r, b] = [left + TICK_BOX_MM, top + TICK_BOX_MM]
        return [
          {
            kind: 'polygon',
            rings: [
              [
                [left, top],
                [r, top],
                [r, b],
                [left, b],
              ],
            ],
            stroke: STROKES.finished,
            fill: null,
          },
          textItem(word, [r + 1.4, top + (TICK_BOX_MM + CAP_HEIGHT * SIZE.note) / 2], { sizeMm: SIZE.note }),
        ]
      })
    },
  }
}

function figureCells(cut: SetOutCut, input: SheetInput): readonly string[] {
  const { text, length } = input
  return [
    cut.side === null ? text.sheetListOwnCut : sideName(text, cut.side),
    length(cut.from.alongMm),
    offsetText(cut.from, input),
    length(cut.to.alongMm),
    offsetText(cut.to, input),
    length(cut.lengthMm),
    checkText(cut, input),
  ]
}

function checkText({ number, check }: SetOutCut, { text, length }: SheetInput): string {
  const distance = length(check.distanceMm)
  const end = endName(number, check.toPoint)
  return check.fromMark === null
    ? text.sheetCheckOwn({ from: endName(number, otherEnd(check)), to: end, distance })
    : text.sheetCheckFromMark({ mark: check.fromMark, end, distance })
}

const otherEnd = ({ toPoint }: CheckDistance): 'from' | 'to' => (toPoint === 'to' ? 'from' : 'to')

function cutNotes(cut: SetOutCut, input: SheetInput): string {
  const { text, length, angle } = input
  const [from, to] = [endName(cut.number, 'from'), endName(cut.number, 'to')]
  const fallsOff = cut.yields.map((name) => text.sheetPiece({ name })).join(', ')
  return [
    text.sheetCutWaste({ side: cut.wasteSide, from, to }),
    text.sheetCutKerf({ kerf: length(cut.kerfMm) }),
    fallsOff === '' ? text.sheetCutYieldsNothing : text.sheetCutYields({ pieces: fallsOff }),
    text.sheetCutAngle({ angle: angle(acuteAngle(cut.angleToDatumRad)) }),
  ].join(' ')
}

/** The same ends by taped distances from the marks. */
const cutTapes = (cut: SetOutCut, input: SheetInput): string =>
  [
    ...tapedText(endName(cut.number, 'from'), cut.from, input),
    ...tapedText(endName(cut.number, 'to'), cut.to, input),
  ].join(' ')

function tapedText(
  end: string,
  { fromMarks }: StationPoint,
  { text, length }: SheetInput,
): readonly string[] {
  if (fromMarks.length < TAPES_SHOWN) return []
  const distances = fromMarks
    .slice(0, TAPES_SHOWN)
    .map(({ markName, distanceMm }) => text.sheetCutTape({ mark: markName, distance: length(distanceMm) }))
    .join(', ')
  return [text.sheetCutTaped({ end, distances })]
}
