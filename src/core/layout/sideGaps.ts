import { type Bounds, type Region, type Ring, ringBounds, type TablePoint, tablePoint } from '../geometry'
import { clipToOutline } from './clipToOutline'
import { type Columns, columnSpans, type Span } from './columnSpans'
import { cornersFilled, type FilledCorners, isInCorner, neighboursOf } from './filledCorners'
import { distanceFromSide, ON_SIDE_MM } from './distanceFromSide'
import { isAlongX, TABLE_SIDES, type SideChoices, type TableSide } from './tableSides'

export interface SideGap {
  readonly side: TableSide
  /** How far wood stops short of the finished side, at most, mm. */
  readonly greatestDepthMm: number
  /** Where it is so short: from the finished side to the wood. */
  readonly deepest: readonly [onSide: TablePoint, onWood: TablePoint]
  /** Along how much of the side, mm. */
  readonly lengthMm: number
}

/** Gaps shallower than this are the thickness of a pencil line, not a place that is short of wood, mm. */
const LEAST_DEPTH_MM = 0.2

/** Depths are read at this spacing along a side, mm. A live edge bends by far less between two readings. */
const COLUMN_STEP_MM = 5

/**
 * Where wood is short within the finished outline, side by side.
 * @param edgeGaps gaps in the blank, mm
 * @returns one entry for each sawn or filled side with a gap, deepest first; depths to within what the edge bends in 5 mm
 * Method: columns square to the side; a column that is deeper than its distance from the neighbouring straight side
 * belongs to that side, not to this one. Where a sawn side meets a filled one, a corner without wood belongs to the
 * filled side.
 * Rules: LAY-5, LAY-27.
 */
export function sideGapsOf(
  finished: Ring<TablePoint>,
  sides: SideChoices,
  edgeGaps: readonly Region<TablePoint>[],
): readonly SideGap[] {
  if (edgeGaps.length === 0) return []
  const bounds = ringBounds(finished)
  const inside = clipToOutline(edgeGaps, finished)
  const corners = cornersFilled(inside, bounds, sides)
  const columns = [0, 1].map((axis) => columnSpans(inside, bounds, axis === 0 ? 0 : 1, COLUMN_STEP_MM))
  return TABLE_SIDES.filter((side) => sides[side].finish !== 'live')
    .map((side) => {
      const { depthMm, at } = greatestDepth(columns[isAlongX(side) ? 0 : 1], { bounds, side, sides, corners })
      return {
        side,
        greatestDepthMm: depthMm,
        deepest: deepestAt(bounds, side, at, depthMm),
        lengthMm: lengthOnSide(inside, bounds, side) - corners[side].before - corners[side].beyond,
      }
    })
    .filter(({ greatestDepthMm: depthMm }) => depthMm > LEAST_DEPTH_MM)
    .sort((p, q) => q.greatestDepthMm - p.greatestDepthMm)
}

interface OfSide {
  readonly bounds: Bounds
  readonly side: TableSide
  readonly sides: SideChoices
  readonly corners: FilledCorners
}

interface Depth {
  readonly depthMm: number
  /** Place along the side, mm. */
  readonly at: number
}

const NO_DEPTH: Depth = { depthMm: 0, at: 0 }

function deepestAt(
  { minX, minY, maxX, maxY }: Bounds,
  side: TableSide,
  at: number,
  depthMm: number,
): SideGap['deepest'] {
  switch (side) {
    case 'start':
      return [tablePoint(minX, at), tablePoint(minX + depthMm, at)]
    case 'end':
      return [tablePoint(maxX, at), tablePoint(maxX - depthMm, at)]
    case 'far':
      return [tablePoint(at, minY), tablePoint(at, minY + depthMm)]
    case 'near':
      return [tablePoint(at, maxY), tablePoint(at, maxY - depthMm)]
  }
}

/** The gap that opens on a side, where it is deepest, over the columns that belong to that side. */
function greatestDepth(columns: Columns | undefined, { bounds, side, sides, corners }: OfSide): Depth {
  if (columns === undefined) return NO_DEPTH
  const [low, high] = isAlongX(side)
    ? ([bounds.minX, bounds.maxX] as const)
    : ([bounds.minY, bounds.maxY] as const)
  const [before, beyond] = neighboursOf(side)
  return columns.at.reduce((greatest: Depth, at, index) => {
    if (isInCorner(at, [low, high], corners[side])) return greatest
    const depthMm = openingDepthMm(columns.spans[index] ?? [], bounds, side)
    const toBefore = takesCorner(side, before, sides, corners) ? Infinity : at - low
    const toBeyond = takesCorner(side, beyond, sides, corners) ? Infinity : high - at
    const isOwn = depthMm <= Math.min(toBefore, toBeyond)
    return isOwn && depthMm > greatest.depthMm ? { depthMm, at } : greatest
  }, NO_DEPTH)
}

/** Whether all of the gap at the corner with a neighbour counts as this side's. */
function takesCorner(
  side: TableSide,
  neighbour: TableSide,
  sides: SideChoices,
  corners: FilledCorners,
): boolean {
  if (sides[neighbour].finish === 'live') return true
  const [before] = neighboursOf(neighbour)
  return corners[neighbour][before === side ? 'before' : 'beyond'] > 0
}

function openingDepthMm(spans: readonly Span[], { minX, minY, maxX, maxY }: Bounds, side: TableSide): number {
  const fromLow = side === 'far' || side === 'start'
  const edge = { start: minX, far: minY, end: maxX, near: maxY }[side]
  const span = fromLow ? spans[0] : spans.at(-1)
  if (span === undefined || Math.abs((fromLow ? span[0] : span[1]) - edge) > ON_SIDE_MM) return 0
  return span[1] - span[0]
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
