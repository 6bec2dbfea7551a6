import { type Point, pointDistanceMm } from '../../geometry'
import {
  type Box,
  CAP_HEIGHT,
  type CircleItem,
  type DrawItem,
  type DrawingView,
  STROKES,
  type Segment,
  type TextItem,
  centredText,
  firstFreeText,
  linesOf,
  onSheet,
  shortenText,
  textCorners,
} from '../../drawing'
import { MARK_ARM_MM, markSymbol } from './markSymbol'
import type { SetOutCut } from '../tableResult'
import { pieceLabel } from './pieceLabel'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { regionOnSheet } from './slabLines'

type Figure = readonly Point[]

export interface LabelRoom {
  /** What is drawn already: labels keep off its texts. */
  readonly taken: readonly DrawItem[]
  readonly datumEnds: Segment
  /** The part of the sheet that labels must stay in. */
  readonly within: Box
}

const TAG_RADIUS_MM = 3.1
const MARK_NAME_ROOM_MM = 40
/** Where a cut's number may stand, as shares of its length: the middle first. */
const TAG_SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88]
/** Eight directions round a place, upper right first. */
const DIRECTIONS: readonly Point[] = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
  [0, -1.25],
  [0, 1.25],
  [1.6, 0],
  [-1.6, 0],
]

const square = ([x, y]: Point, half: number): Figure => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
]

const onTheWay = ([a, b]: Segment, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
]

/** Numbers of the cuts, names of marks and pieces, the datum's name: each where it is free. Rules: SHT-3. */
export function slabLabels(input: SheetInput, view: DrawingView, room: LabelRoom): readonly DrawItem[] {
  const { within } = room
  const marks = input.marks.map((mark) => ({ ...mark, at: onSheet(view, mark.at) }))
  const taken: Figure[] = [
    ...room.taken.flatMap((item) => (item.kind === 'text' ? [textCorners(item)] : [])),
    ...marks.map(({ at }) => square(at, MARK_ARM_MM)),
  ]
  const symbols = marks.flatMap(({ at }) => markSymbol(at))
  const labels: DrawItem[] = []
  const heavy: readonly Figure[] = room.taken.flatMap((item) => (isHeavy(item) ? linesOf(item) : []))
  const put = (free: TextItem | null, ground: readonly DrawItem[] = []): boolean => {
    if (free === null) return false
    taken.push(textCorners(free, 0.4))
    labels.push(...ground, free)
    return true
  }
  const clear = (candidates: readonly TextItem[]): TextItem | null =>
    firstFreeText(candidates, [...taken, ...heavy], within)
  for (const cut of input.pieces.cuts) {
    // A number belongs on its cut; other labels go beside the strong lines if they can.
    const free = firstFreeText(tagCandidates(cut, view, { taken, within }), taken, within)
    if (free === null) continue
    const ground = tagGround(free)
    taken.push(square(ground.centre, TAG_RADIUS_MM))
    put(free, [ground])
  }
  for (const candidates of [
    ...marks.map(({ name, at }) => markCandidates(name, at)),
    datumCandidates(input, room.datumEnds),
    zeroCandidates(input, onSheet(view, [0, 0]), marks),
  ]) {
    put(clear(candidates) ?? firstFreeText(candidates, taken, within))
  }
  for (const piece of input.pieces.pieces) {
    if (piece.use === 'table' || piece.name === '') continue
    const name = input.text.sheetPiece({ name: piece.name })
    const place = { anchor: onSheet(view, piece.anchor), region: regionOnSheet(view, piece.region) }
    const label = pieceLabel(name, place, { taken, heavy, within })
    if (label !== null) put(label.text, label.leader)
  }
  return [...symbols, ...labels]
}

/** Lines that a label's white ground should not break, if it can be helped. */
const isHeavy = (item: DrawItem): boolean =>
  'stroke' in item && item.stroke !== null && item.stroke.widthMm >= STROKES.finished.widthMm

/** The number of a cut in a black disc on its line; the disc keeps off what is there as well as the number. */
function tagCandidates(
  cut: SetOutCut,
  view: DrawingView,
  { taken, within }: { readonly taken: readonly Figure[]; readonly within: Box },
): readonly TextItem[] {
  const line: Segment = [onSheet(view, cut.from.at), onSheet(view, cut.to.at)]
  return TAG_SHARES.map((share) => onTheWay(line, share))
    .filter((at) => firstFreeText([discSized(at)], taken, within) !== null)
    .map((at) => centredText(String(cut.number), at, { sizeMm: SIZE.figure, weight: 'bold', reversed: true }))
}

/** A stand-in of the disc's size for the test of what is free. */
const discSized = (at: Point): TextItem => centredText('00', at, { sizeMm: 2 * TAG_RADIUS_MM })

function tagGround({ at, sizeMm }: TextItem): CircleItem {
  const centre: Point = [at[0], at[1] - (CAP_HEIGHT * sizeMm) / 2]
  return { kind: 'circle', centre, radiusMm: TAG_RADIUS_MM, stroke: null, fill: 'black' }
}

function markCandidates(name: string, [x, y]: Point): readonly TextItem[] {
  const style = { sizeMm: SIZE.figure, weight: 'bold', plate: true, maxWidthMm: MARK_NAME_ROOM_MM } as const
  const text = shortenText(name, style)
  const away = MARK_ARM_MM + SIZE.figure * 0.35
  return [away, away * 1.7].flatMap((reach) =>
    DIRECTIONS.map(([dx, dy]) => centredText(text, [x + dx * reach, y + dy * reach], style)),
  )
}

function datumCandidates({ text }: SheetInput, ends: Segment): readonly TextItem[] {
  const style = { sizeMm: SIZE.note, plate: true } as const
  const rise = SIZE.note * 0.8
  return [0.94, 0.88, 0.82, 0.76, 0.7, 0.06, 0.12, 0.3, 0.4, 0.5, 0.6].flatMap((share) => {
    const [x, y] = onTheWay(ends, share)
    return [
      centredText(text.sheetDatum, [x, y - rise], style),
      centredText(text.sheetDatum, [x, y + rise], style),
    ]
  })
}

/** The datum's zero, unless a mark says already where it is. */
function zeroCandidates(
  { text }: SheetInput,
  zero: Point,
  marks: readonly { readonly at: Point }[],
): readonly TextItem[] {
  if (marks.some(({ at }) => pointDistanceMm(at, zero) < MARK_ARM_MM)) return []
  const style = { sizeMm: SIZE.note, plate: true } as const
  return [4, 6.5].flatMap((reach) =>
    DIRECTIONS.map(([dx, dy]) =>
      centredText(text.sheetZero, [zero[0] + dx * reach, zero[1] + dy * reach], style),
    ),
  )
}
