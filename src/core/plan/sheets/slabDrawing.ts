import { type Bounds, type Point, ringBounds } from '../../geometry'
import {
  type Box,
  type Callout,
  type DrawItem,
  type DrawingScale,
  type DrawingView,
  LEADER_ZONE_MM,
  calloutRow,
  calloutRowHeightMm,
  centredView,
  onSheet,
  pickScale,
} from '../../drawing'
import { cutLines, datumLine, slabLines } from './slabLines'
import { slabLabels } from './slabLabels'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { endName, offsetText } from './stationText'

export interface SlabDrawing {
  readonly items: readonly DrawItem[]
  readonly scale: DrawingScale
  /** False when there were too many cut ends to write their stations beside the drawing. */
  readonly stationsShown: boolean
}

/** Room at each end for the datum's ends, which run past the wood, mm of paper. */
const DATUM_PAST_MM = 6
/** Air between the drawing and the zone of the leaders, mm of paper. */
const AIR_MM = 2

/** The slab from above with its cuts and their stations, as large as a usual scale lets it be; null: no scale fits. */
export function slabDrawing(input: SheetInput, box: Box): SlabDrawing | null {
  const callouts = stationCallouts(input)
  const rowMm =
    callouts.length === 0 ? 0 : calloutRowHeightMm(callouts, SIZE.figure) + LEADER_ZONE_MM + AIR_MM
  const room: Box = {
    xMm: box.xMm + DATUM_PAST_MM,
    yMm: box.yMm + rowMm,
    widthMm: box.widthMm - 2 * DATUM_PAST_MM,
    heightMm: box.heightMm - 2 * rowMm,
  }
  if (room.widthMm <= 0 || room.heightMm <= 0) return null
  const bounds = ringBounds([
    ...input.shape.outline,
    ...input.footprint.finishedOnSlab,
    ...input.marks.map(({ at }) => at),
    [0, 0],
    [input.datumLengthMm ?? 0, 0],
  ])
  const size = { widthMm: bounds.maxX - bounds.minX, heightMm: bounds.maxY - bounds.minY }
  const scale = pickScale(size, room, input.display.system)
  if (scale === null) return null
  const view = centredView(scale, bounds, room)
  const datum = datumLine(view, bounds, DATUM_PAST_MM)
  const lines = [...slabLines(input, view, drawnBox(view, bounds)), ...cutLines(input, view), ...datum.items]
  const rows = stationRows(callouts, view, { box, bounds: [bounds.minY, bounds.maxY] })
  const labels = slabLabels(input, view, {
    taken: [...lines, ...rows.items],
    datumEnds: datum.ends,
    within: box,
  })
  return { items: [...lines, ...rows.items, ...labels], scale, stationsShown: rows.shown }
}

/** What the drawing may take on the sheet: its bounds and the air round them, short of the texts beside it. */
function drawnBox(view: DrawingView, { minX, minY, maxX, maxY }: Bounds): Box {
  const [left, top] = onSheet(view, [minX, minY])
  const [right, bottom] = onSheet(view, [maxX, maxY])
  return {
    xMm: left - AIR_MM,
    yMm: top - AIR_MM,
    widthMm: right - left + 2 * AIR_MM,
    heightMm: bottom - top + 2 * AIR_MM,
  }
}

interface CutEnd extends Callout {
  readonly offsetMm: number
  readonly onSlab: Point
}

/** Both ends of every cut, by the stations that they are set out with. */
function stationCallouts(input: SheetInput): readonly CutEnd[] {
  return input.pieces.cuts.flatMap((cut) =>
    (['from', 'to'] as const).map((end): CutEnd => {
      const station = cut[end]
      return {
        at: station.at,
        onSlab: station.at,
        offsetMm: station.offsetMm,
        tag: endName(cut.number, end),
        first: input.text.sheetAlong({ along: input.length(station.alongMm) }),
        second: offsetText(station, input),
      }
    }),
  )
}

/** Half of the ends above the drawing and half below, by which lies higher; tags alone when the figures do not fit. */
function stationRows(
  ends: readonly CutEnd[],
  view: DrawingView,
  { box, bounds }: { readonly box: Box; readonly bounds: readonly [number, number] },
): { readonly items: readonly DrawItem[]; readonly shown: boolean } {
  const placed = ends.map((end) => ({ ...end, at: onSheet(view, end.onSlab) }))
  const byHeight = placed.toSorted((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0])
  const half = Math.ceil(byHeight.length / 2)
  const edge = (y: number): number => onSheet(view, [0, y])[1]
  const common = { fromMm: box.xMm, toMm: box.xMm + box.widthMm, sizeMm: SIZE.figure }
  const rowsOf = (callouts: readonly Callout[]): readonly DrawItem[] | null => {
    const above = { ...common, side: 'above', yMm: edge(bounds[0]) - LEADER_ZONE_MM - AIR_MM } as const
    const below = { ...common, side: 'below', yMm: edge(bounds[1]) + LEADER_ZONE_MM + AIR_MM } as const
    const rows = [
      calloutRow(callouts.slice(0, half), above),
      calloutRow(callouts.slice(half), below),
    ] as const
    return rows[0] === null || rows[1] === null ? null : [...rows[0], ...rows[1]]
  }
  const full = rowsOf(byHeight)
  if (full !== null) return { items: full, shown: true }
  const tags = byHeight.map((callout) => ({ ...callout, first: '', second: '' }))
  return { items: rowsOf(tags) ?? [], shown: false }
}
