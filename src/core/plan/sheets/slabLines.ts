import { type Bounds, type Point, type Region, type Ring, pointDistanceMm } from '../../geometry'
import {
  type Box,
  type DrawItem,
  type DrawingView,
  STROKES,
  type Segment,
  arrowHead,
  clipSegment,
  hatchRegion,
  onSheet,
} from '../../drawing'
import type { SetOutCut } from '../tableResult'
import type { SheetInput } from './sheetInput'

/** Hatching of an opening: the usual 45°, wide enough to stay open on a copier. */
export const HATCH = { spacingMm: 1.8, angleRad: -Math.PI / 4 } as const

const TICK_MM = 2.4
const TICK_STEP_MM = 4
const CUT_PAST_MM = 3
/** Radius of the ring that marks the datum's zero (ISO 129-1 marks an origin so). */
const ZERO_RADIUS_MM = 1.1

export const ringOnSheet = (view: DrawingView, ring: Ring): readonly Point[] =>
  ring.map((point) => onSheet(view, point))

export const regionOnSheet = (view: DrawingView, region: Region): Region => ({
  outer: ringOnSheet(view, region.outer),
  holes: region.holes.map((hole) => ringOnSheet(view, hole)),
})

const sidesOf = (ring: readonly Point[]): readonly Segment[] =>
  ring.map((from, k): Segment => [from, ring[(k + 1) % ring.length] ?? from])

/** Edge of the wood, voids, finished table and blank. */
export function slabLines(
  { shape, footprint }: Pick<SheetInput, 'shape' | 'footprint'>,
  view: DrawingView,
  room: Box,
): readonly DrawItem[] {
  const voids = shape.voids.map(({ ring }): Region => ({ outer: ringOnSheet(view, ring), holes: [] }))
  const blank = sidesOf(ringOnSheet(view, footprint.blankOnSlab))
  return [
    { kind: 'segments', segments: voids.flatMap((hole) => hatchRegion(hole, HATCH)), stroke: STROKES.hatch },
    { kind: 'polygon', rings: voids.map(({ outer }) => outer), stroke: STROKES.opening, fill: null },
    { kind: 'polygon', rings: [ringOnSheet(view, shape.outline)], stroke: STROKES.outline, fill: null },
    {
      // A kept side's blank reaches past the slab: it ends where the drawing does.
      kind: 'segments',
      segments: clipped(blank, room),
      stroke: STROKES.blank,
    },
    {
      kind: 'polygon',
      rings: [ringOnSheet(view, footprint.finishedOnSlab)],
      stroke: STROKES.finished,
      fill: null,
    },
  ]
}

function clipped(segments: readonly Segment[], room: Box): readonly Segment[] {
  return segments.flatMap((segment) => {
    const inside = clipSegment(segment, room)
    return inside === null ? [] : [inside]
  })
}

interface CutOnSheet {
  readonly from: Point
  readonly to: Point
  readonly unit: Point
  readonly lengthMm: number
}

function cutOnSheet(cut: SetOutCut, view: DrawingView): CutOnSheet {
  const [from, to] = [onSheet(view, cut.from.at), onSheet(view, cut.to.at)]
  const lengthMm = pointDistanceMm(from, to)
  const unit: Point = lengthMm === 0 ? [1, 0] : [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
  return { from, to, unit, lengthMm }
}

/** Short slanted strokes on the side of the line that is waste (right of one who walks along it: y is down). */
function wasteTicks({ from, unit, lengthMm }: CutOnSheet, wasteSide: 'left' | 'right'): readonly Segment[] {
  const side = wasteSide === 'right' ? 1 : -1
  const [dx, dy] = [
    (unit[0] - unit[1] * side) * Math.SQRT1_2 * TICK_MM,
    (unit[1] + unit[0] * side) * Math.SQRT1_2 * TICK_MM,
  ]
  const count = Math.floor((lengthMm - TICK_MM) / TICK_STEP_MM)
  return Array.from({ length: Math.max(0, count) }, (_, k): Segment => {
    const along = (k + 0.5) * TICK_STEP_MM
    const at: Point = [from[0] + unit[0] * along, from[1] + unit[1] * along]
    return [at, [at[0] + dx, at[1] + dy]]
  })
}

/** Each cut a little past its ends, its waste ticks, and the square that leads from the datum to each end. */
export function cutLines({ pieces }: Pick<SheetInput, 'pieces'>, view: DrawingView): readonly DrawItem[] {
  const squares = pieces.cuts.flatMap((cut) =>
    [cut.from, cut.to].map((station): Segment => [
      onSheet(view, [station.alongMm, 0]),
      onSheet(view, station.at),
    ]),
  )
  const cuts = pieces.cuts.map((cut) => ({ cut, line: cutOnSheet(cut, view) }))
  return [
    { kind: 'segments', segments: squares, stroke: STROKES.helper },
    {
      kind: 'segments',
      segments: cuts.flatMap(({ cut, line }) => wasteTicks(line, cut.wasteSide)),
      stroke: STROKES.thin,
    },
    ...cuts.map(({ line: { from, to, unit } }): DrawItem => {
      const past: Point = [unit[0] * CUT_PAST_MM, unit[1] * CUT_PAST_MM]
      const points: readonly Point[] = [
        [from[0] - past[0], from[1] - past[1]],
        [to[0] + past[0], to[1] + past[1]],
      ]
      return { kind: 'polyline', points, stroke: STROKES.cut }
    }),
  ]
}

/** The datum right across the drawing with its zero and its direction. */
export function datumLine(
  view: DrawingView,
  bounds: Bounds,
  pastMm: number,
): { readonly items: readonly DrawItem[]; readonly ends: Segment } {
  const [left, y] = onSheet(view, [bounds.minX, 0])
  const [right] = onSheet(view, [bounds.maxX, 0])
  const ends: Segment = [
    [left - pastMm + 1, y],
    [right + pastMm, y],
  ]
  return {
    ends,
    items: [
      { kind: 'polyline', points: ends, stroke: STROKES.datum },
      arrowHead(ends[1], [1, 0], 4),
      {
        kind: 'circle',
        centre: onSheet(view, [0, 0]),
        radiusMm: ZERO_RADIUS_MM,
        stroke: STROKES.finished,
        fill: 'white',
      },
    ],
  }
}
