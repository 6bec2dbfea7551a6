import {
  type Bounds,
  intersectRegions,
  type Point,
  type Region,
  type Ring,
  ringBounds,
  type TablePoint,
} from '../geometry'
import { TABLE_SIDES, type SideChoices, type TableSide } from './tableSides'

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

/**
 * Where wood is short within the finished outline, side by side.
 * @param edgeGaps gaps in the blank, mm
 * @returns one entry for each sawn or filled side with a gap, deepest first
 * Method: each corner of a gap counts for the nearest side that is not a kept edge.
 * Rules: LAY-5.
 */
export function sideGapsOf(
  finished: Ring<TablePoint>,
  sides: SideChoices,
  edgeGaps: readonly Region<TablePoint>[],
): readonly SideGap[] {
  if (edgeGaps.length === 0) return []
  const bounds = ringBounds(finished)
  const straight = TABLE_SIDES.filter((side) => sides[side].finish !== 'live')
  const inside = intersectRegions(edgeGaps, [{ outer: finished, holes: [] }])
  const depths = new Map<TableSide, number>()
  for (const point of inside.flatMap((region) => [...region.outer, ...region.holes.flat()])) {
    const nearest = nearestSide(point, bounds, straight)
    if (nearest === null) continue
    depths.set(nearest.side, Math.max(depths.get(nearest.side) ?? 0, nearest.distanceMm))
  }
  return straight
    .map((side) => ({
      side,
      greatestDepthMm: depths.get(side) ?? 0,
      lengthMm: lengthOnSide(inside, bounds, side),
    }))
    .filter(({ greatestDepthMm }) => greatestDepthMm > LEAST_DEPTH_MM)
    .sort((a, b) => b.greatestDepthMm - a.greatestDepthMm)
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

function nearestSide(
  point: Point,
  bounds: Bounds,
  among: readonly TableSide[],
): { readonly side: TableSide; readonly distanceMm: number } | null {
  return among.reduce<{ side: TableSide; distanceMm: number } | null>((best, side) => {
    const distanceMm = distanceFromSide(point, bounds, side)
    return best === null || distanceMm < best.distanceMm ? { side, distanceMm } : best
  }, null)
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
