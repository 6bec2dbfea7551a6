import type { Point } from '../geometry'
import type { DrawItem } from './sheet'
import { spreadLabels } from './spreadLabels'
import { STROKES } from './strokes'
import { LINE_SPACING, textItem } from './textItems'
import { CAP_HEIGHT, INK_BOTTOM, textWidthMm } from './textMetrics'

export interface Callout {
  /** The place on the sheet that it speaks of. */
  readonly at: Point
  readonly tag: string
  /** Behind the tag on the first line, and on the line below; empty texts for a tag alone. */
  readonly first: string
  readonly second: string
}

export interface CalloutRow {
  readonly side: 'above' | 'below'
  /** Edge of the row that looks at the drawing. */
  readonly yMm: number
  readonly fromMm: number
  readonly toMm: number
  readonly sizeMm: number
}

const TAG_GAP_MM = 1.2
const GAP_MM = 3.5
/** Height of the zone in which leaders slant from their place to their text. */
export const LEADER_ZONE_MM = 5
const LEADER_AIR_MM = 1

const firstWidth = ({ tag, first }: Callout, sizeMm: number): number =>
  textWidthMm(tag, sizeMm, 'bold') + (first === '' ? 0 : TAG_GAP_MM + textWidthMm(first, sizeMm))

const widthOf = (callout: Callout, sizeMm: number): number =>
  Math.max(firstWidth(callout, sizeMm), textWidthMm(callout.second, sizeMm))

const lineCount = (callouts: readonly Callout[]): number =>
  callouts.some((callout) => callout.second !== '') ? 2 : 1

/** Height of a row of callouts without its leader zone, mm. */
export const calloutRowHeightMm = (callouts: readonly Callout[], sizeMm: number): number =>
  sizeMm * (CAP_HEIGHT - INK_BOTTOM + (lineCount(callouts) - 1) * LINE_SPACING)

function calloutItems(
  callout: Callout,
  left: number,
  firstBaseline: number,
  sizeMm: number,
): readonly DrawItem[] {
  const { tag, first, second } = callout
  const tagWidth = textWidthMm(tag, sizeMm, 'bold')
  const tagItem = textItem(tag, [left, firstBaseline], { sizeMm, weight: 'bold' })
  const firstItem = textItem(first, [left + tagWidth + TAG_GAP_MM, firstBaseline], { sizeMm })
  const secondItem = textItem(second, [left, firstBaseline + LINE_SPACING * sizeMm], { sizeMm })
  return [tagItem, ...(first === '' ? [] : [firstItem]), ...(second === '' ? [] : [secondItem])]
}

/**
 * Labels in a row beside the drawing, each with a leader to its place; moved apart so that none overlaps and no
 * leaders cross (they keep the order of their places).
 * @returns null when the row is too short for them
 * Rules: DRW-8.
 */
export function calloutRow(callouts: readonly Callout[], row: CalloutRow): readonly DrawItem[] | null {
  const { side, yMm, sizeMm } = row
  const ordered = callouts.toSorted((a, b) => a.at[0] - b.at[0])
  const middles = spreadLabels(
    ordered.map((callout) => ({ wantedMm: callout.at[0], widthMm: widthOf(callout, sizeMm) })),
    { fromMm: row.fromMm, toMm: row.toMm, gapMm: GAP_MM },
  )
  if (middles === null) return null
  const top = side === 'above' ? yMm - calloutRowHeightMm(callouts, sizeMm) : yMm
  const away = side === 'above' ? -1 : 1
  const textEdge = yMm - away * LEADER_AIR_MM
  const elbow = yMm - away * LEADER_ZONE_MM
  return ordered.flatMap((callout, k): readonly DrawItem[] => {
    const middle = middles[k] ?? callout.at[0]
    return [
      {
        kind: 'polyline',
        points: [callout.at, [callout.at[0], elbow], [middle, textEdge]],
        stroke: STROKES.thin,
      },
      ...calloutItems(callout, middle - widthOf(callout, sizeMm) / 2, top + CAP_HEIGHT * sizeMm, sizeMm),
    ]
  })
}
