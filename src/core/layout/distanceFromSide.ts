import type { Bounds, Point } from '../geometry'
import type { TableSide } from './tableSides'

/** A point this near to a side lies on it, mm: well above the clipping grid, well below what a saw can follow. */
export const ON_SIDE_MM = 0.01

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
