import { type Bounds, type Point, type Region, type Ring, ringBounds, type TablePoint } from '../geometry'
import { clipToOutline } from './clipToOutline'
import { type Columns, columnSpans, type Span } from './columnSpans'
import { isAlongX, TABLE_SIDES, type SideChoices, type TableSide } from './tableSides'

export interface SideGap {
  readonly side: TableSide
  /** How far wood stops short of the finished side, at most, mm. */
  readonly greatestDepthMm: number
  /** Along how much of the side, mm. */
  readonly lengthMm: number
}

/** A point this near to a side lies on it, mm: well above the clipping grid, well below what a saw can follow. */
const ON_SIDE_MM = 0.01

/** Gaps shallower than this are the thickness of a pencil line, not a place that is short of wood, mm. */
const LEAST_DEPTH_MM = 0.2

/** Depths are read at this spacing along a side, mm. A live edge bends by far less between two readings. */
const COLUMN_STEP_MM = 5

/**
 * Where wood is short within the finished outline, side by side.
 * @param edgeGaps gaps in the blank, mm
 * @returns one entry for each sawn or filled side with a gap, deepest first; depths to within what the edge bends in 5 mm
 * Method: columns square to the side; a column that is deeper than its distance from the neighbouring straight side
 * belongs to that side, not to this one.
 * Rules: LAY-5.
 */
export function sideGapsOf(
  finished: Ring<TablePoint>,
  sides: SideChoices,
  edgeGaps: readonly Region<TablePoint>[],
): readonly SideGap[] {
  if (edgeGaps.length === 0) return []
  const bounds = ringBounds(finished)
  const inside = clipToOutline(edgeGaps, finished)
  const columns = [0, 1].map((axis) => columnSpans(inside, bounds, axis === 0 ? 0 : 1, COLUMN_STEP_MM))
  return TABLE_SIDES.filter((side) => sides[side].finish !== 'live')
    .map((side) => ({
      side,
      greatestDepthMm: greatestDepthMm(columns[isAlongX(side) ? 0 : 1], bounds, side, sides),
      lengthMm: lengthOnSide(inside, bounds, side),
    }))
    .filter(({ greatestDepthMm: depthMm }) => depthMm > LEAST_DEPTH_MM)
    .sort((p, q) => q.greatestDepthMm - p.greatestDepthMm)
}

/** Depth of the gap that opens on a side, over the columns that belong to that side. */
function greatestDepthMm(
  columns: Columns | undefined,
  bounds: Bounds,
  side: TableSide,
  sides: SideChoices,
): number {
  if (columns === undefined) return 0
  const [low, high] = isAlongX(side)
    ? ([bounds.minX, bounds.maxX] as const)
    : ([bounds.minY, bounds.maxY] as const)
  const [before, beyond] = isAlongX(side) ? (['start', 'end'] as const) : (['far', 'near'] as const)
  return columns.at.reduce((greatest, at, index) => {
    const depthMm = openingDepthMm(columns.spans[index] ?? [], bounds, side)
    const toBefore = sides[before].finish === 'live' ? Infinity : at - low
    const toBeyond = sides[beyond].finish === 'live' ? Infinity : high - at
    return depthMm <= Math.min(toBefore, toBeyond) ? Math.max(greatest, depthMm) : greatest
  }, 0)
}

function openingDepthMm(spans: readonly Span[], { minX, minY, maxX, maxY }: Bounds, side: TableSide): number {
  const fromLow = side === 'far' || side === 'start'
  const edge = { start: minX, far: minY, end: maxX, near: maxY }[side]
  const span = fromLow ? spans[0] : spans.at(-1)
  if (span === undefined || Math.abs((fromLow ? span[0] : span[1]) - edge) > ON_SIDE_MM) return 0
  return span[1] - span[0]
}

/** Distance of a point from one side of the finished outline's rectangle, inwards positive, mm. */
export function distanceFromSide(point: Point, bounds: Bounds, side: TableSide): number {
  switch (side) {
    case 'start':
      return point[0] - bounds.minX
    case 'end':
      return bounds.maxX - point[0]
    case 'far':
      return point[1] - bounds.minY
    case 'near':
      return bounds.maxY - point[1]
  }
}

function lengthOnSide(regions: readonly Region<TablePoint>[], bounds: Bounds, side: TableSide): number {
  let lengthMm = 0
  for (const { outer } of regions) {
    outer.forEach((a, index) => {
      const b = outer[(index + 1) % outer.length] ?? a
      const onSide = [a, b].every((point) => Math.abs(distanceFromSide(point, bounds, side)) < ON_SIDE_MM)
      if (onSide) lengthMm += Math.hypot(b[0] - a[0], b[1] - a[1])
    })
  }
  return lengthMm
}
