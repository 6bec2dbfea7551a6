import { isPointInRegion, type Point, type Region } from '../../geometry'
import {
  type Box,
  type DrawItem,
  STROKES,
  type Segment,
  type TextItem,
  centredText,
  convexOverlap,
  firstFreeText,
  shortenText,
  textBox,
  textCorners,
} from '../../drawing'
import { SIZE } from './sheetStyle'

type Figure = readonly Point[]

export interface PieceLabel {
  readonly text: TextItem
  /** Empty when the name stands inside its piece. */
  readonly leader: readonly DrawItem[]
}

export interface PiecePlace {
  /** A point well inside the piece, mm of paper. */
  readonly anchor: Point
  readonly region: Region
}

const NAME_ROOM_MM = 60
const DOT_RADIUS_MM = 0.6
const SHIFTS_MM = [0, 8, -8, 16, -16, 28, -28, 45, -45]
const REACHES_MM = [5, 8, 11, 14]
const SIDE_SHIFTS_MM = [-14, -8, 0, 8, 14, -22, 22]

/**
 * A piece's name: inside it where it fits, level or turned; else beside it with a leader.
 * @param keepOff  what no name may touch, lines that its ground should not break, and the part of the sheet to stay in
 * @returns null when there is no room for it
 */
export function pieceLabel(
  name: string,
  { anchor, region }: PiecePlace,
  keepOff: {
    readonly taken: readonly Figure[]
    readonly heavy: readonly Figure[]
    readonly within: Box
  },
): PieceLabel | null {
  const { within } = keepOff
  const all = [...keepOff.taken, ...keepOff.heavy]
  const inside = firstFreeText(insideCandidates(name, anchor, region), all, within)
  if (inside !== null) return { text: inside, leader: [] }
  const isTaken = (figure: Figure): boolean => keepOff.taken.some((other) => convexOverlap(figure, other))
  if (isTaken(dotSquare(anchor))) return null
  const beside = besideCandidates(name, anchor).filter((label) => !isTaken(leaderLine(anchor, label)))
  const free = firstFreeText(beside, all, within)
  return free === null ? null : { text: free, leader: leaderItems(anchor, free) }
}

function insideCandidates(name: string, [x, y]: Point, region: Region): readonly TextItem[] {
  return [SIZE.figure, SIZE.note]
    .flatMap((sizeMm) => [
      ...SHIFTS_MM.map((shift) => nameText(name, [x + shift, y], sizeMm)),
      ...SHIFTS_MM.map((shift) => nameText(name, [x, y + shift], sizeMm, -Math.PI / 2)),
    ])
    .filter((label) => textCorners(label).every((corner) => isPointInRegion(corner, region)))
}

const besideCandidates = (name: string, [x, y]: Point): readonly TextItem[] =>
  REACHES_MM.flatMap((reach) =>
    SIDE_SHIFTS_MM.flatMap((shift) =>
      [-1, 1].map((side) => nameText(name, [x + shift, y + side * reach], SIZE.note)),
    ),
  )

function nameText(name: string, at: Point, sizeMm: number, angleRad = 0): TextItem {
  const style = { sizeMm, plate: true, maxWidthMm: NAME_ROOM_MM, angleRad } as const
  return centredText(shortenText(name, style), at, style)
}

/** From a piece to the nearest edge of its name. */
function leaderLine(anchor: Point, label: TextItem): Segment {
  const box = textBox(label, 0.6)
  return [
    anchor,
    [
      Math.min(Math.max(anchor[0], box.xMm), box.xMm + box.widthMm),
      Math.min(Math.max(anchor[1], box.yMm), box.yMm + box.heightMm),
    ],
  ]
}

const dotSquare = ([x, y]: Point): Figure => [
  [x - DOT_RADIUS_MM, y - DOT_RADIUS_MM],
  [x + DOT_RADIUS_MM, y - DOT_RADIUS_MM],
  [x + DOT_RADIUS_MM, y + DOT_RADIUS_MM],
  [x - DOT_RADIUS_MM, y + DOT_RADIUS_MM],
]

/** The leader ends in a dot on the piece, as ISO 128 has one that ends within an outline. */
const leaderItems = (anchor: Point, label: TextItem): readonly DrawItem[] => [
  { kind: 'segments', segments: [leaderLine(anchor, label)], stroke: STROKES.thin },
  { kind: 'circle', centre: anchor, radiusMm: DOT_RADIUS_MM, stroke: null, fill: 'black' },
]
