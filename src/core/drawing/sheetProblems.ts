import { isPointInRing, type Point } from '../geometry'
import { convexOverlap } from './convexOverlap'
import type { Box, DrawItem, Sheet, TextItem } from './sheet'
import { linesOf } from './sheetLines'
import { textBox, textCorners } from './textBox'
import { textWidthMm } from './textMetrics'

export interface SheetProblem {
  readonly kind:
    | 'texts-overlap'
    | 'text-off-the-page'
    | 'line-off-the-page'
    | 'text-wider-than-its-room'
    | 'text-too-small'
    | 'line-through-text'
  readonly text: string
  readonly other?: string
}

/** Printers leave a border blank; nothing of a sheet may stand nearer to the edge, mm. Common practice, no source. */
export const UNPRINTED_BORDER_MM = 6
/** Least font size of a note, mm. */
const LEAST_SIZE_MM = 2.6
/** Widths are sums of rounded figures. */
const WIDTH_SLACK_MM = 0.01

interface PlacedText {
  readonly item: TextItem
  readonly place: number
  readonly corners: readonly Point[]
  readonly box: Box
}

const isInside = ([x, y]: Point, sheet: Sheet): boolean =>
  x >= UNPRINTED_BORDER_MM &&
  y >= UNPRINTED_BORDER_MM &&
  x <= sheet.widthMm - UNPRINTED_BORDER_MM &&
  y <= sheet.heightMm - UNPRINTED_BORDER_MM

function boxesMeet(a: Box, b: Box): boolean {
  return (
    a.xMm < b.xMm + b.widthMm &&
    b.xMm < a.xMm + a.widthMm &&
    a.yMm < b.yMm + b.heightMm &&
    b.yMm < a.yMm + a.heightMm
  )
}

function ownProblems({ item, corners }: PlacedText, sheet: Sheet): readonly SheetProblem[] {
  const { text, maxWidthMm = Infinity } = item
  const found: SheetProblem[] = []
  if (!corners.every((corner) => isInside(corner, sheet))) found.push({ kind: 'text-off-the-page', text })
  if (item.sizeMm < LEAST_SIZE_MM) found.push({ kind: 'text-too-small', text })
  if (textWidthMm(text, item.sizeMm, item.weight) > maxWidthMm + WIDTH_SLACK_MM) {
    found.push({ kind: 'text-wider-than-its-room', text })
  }
  return found
}

function overlaps(texts: readonly PlacedText[]): readonly SheetProblem[] {
  return texts.flatMap((a, k) =>
    texts
      .slice(k + 1)
      .filter((b) => boxesMeet(a.box, b.box) && convexOverlap(a.corners, b.corners))
      .map((b): SheetProblem => ({ kind: 'texts-overlap', text: a.item.text, other: b.item.text })),
  )
}

/** Whether a filled figure lies behind the whole text, so that lines drawn before it do not show there. */
function isGround(item: DrawItem, corners: readonly Point[]): boolean {
  if (item.kind === 'circle' && item.fill !== null) {
    return corners.every(
      (corner) => Math.hypot(corner[0] - item.centre[0], corner[1] - item.centre[1]) < item.radiusMm,
    )
  }
  if (item.kind !== 'polygon' || item.fill === null) return false
  const [outer, ...others] = item.rings
  return outer !== undefined && others.length === 0 && corners.every((corner) => isPointInRing(corner, outer))
}

/** Place in the order of drawing of the last ground behind a text: its own plate, a filled figure, or the paper. */
function groundPlace({ item, place, corners }: PlacedText, sheet: Sheet): number {
  if (item.plate) return place
  return sheet.items.slice(0, place).findLastIndex((below) => isGround(below, corners))
}

/** Lines that run through letters: drawn after the ground that the text stands on. */
function crossedTexts(texts: readonly PlacedText[], sheet: Sheet): readonly SheetProblem[] {
  const lines = sheet.items.map(linesOf)
  const isCrossed = (placed: PlacedText): boolean => {
    const { corners, box } = placed
    return lines
      .slice(groundPlace(placed, sheet) + 1)
      .some((segments) => segments.some((line) => mayMeet(line, box) && convexOverlap(line, corners)))
  }
  return texts
    .filter(isCrossed)
    .map((placed): SheetProblem => ({ kind: 'line-through-text', text: placed.item.text }))
}

function mayMeet([a, b]: readonly [Point, Point], box: Box): boolean {
  return (
    Math.min(a[0], b[0]) <= box.xMm + box.widthMm &&
    Math.max(a[0], b[0]) >= box.xMm &&
    Math.min(a[1], b[1]) <= box.yMm + box.heightMm &&
    Math.max(a[1], b[1]) >= box.yMm
  )
}

/**
 * What is wrong with a sheet as a thing to be read: texts over one another, out of the printed area, wider than
 * their room, too small, or with a line through them; lines out of the printed area.
 * @returns none for a sheet that may go out; made-up text sizes come from the font's own widths
 * Rules: DRW-4.
 */
export function sheetProblems(sheet: Sheet): readonly SheetProblem[] {
  const texts = sheet.items.flatMap((item, place): readonly PlacedText[] =>
    item.kind === 'text' ? [{ item, place, corners: textCorners(item), box: textBox(item) }] : [],
  )
  const strays = sheet.items.filter(
    (item) =>
      !linesOf(item)
        .flat()
        .every((end) => isInside(end, sheet)),
  )
  return [
    ...texts.flatMap((placed) => ownProblems(placed, sheet)),
    ...overlaps(texts),
    ...crossedTexts(texts, sheet),
    ...strays.map((item): SheetProblem => ({ kind: 'line-off-the-page', text: item.kind })),
  ]
}
