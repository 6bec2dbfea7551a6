import { type Bounds, type Region, regionBounds, type TablePoint } from '../geometry'
import { TABLE_SIDES, type TableSide } from './tableSides'

/** A gap that comes this near to the rim of the blank opens on it, mm. */
export const RIM_TOLERANCE_MM = 1

/**
 * Sides of the blank that a gap comes to.
 * @param rim bounds of the blank
 */
export function sidesReached(region: Region<TablePoint>, rim: Bounds): readonly TableSide[] {
  const bounds = regionBounds(region)
  const reaches: Record<TableSide, boolean> = {
    start: bounds.minX < rim.minX + RIM_TOLERANCE_MM,
    end: bounds.maxX > rim.maxX - RIM_TOLERANCE_MM,
    far: bounds.minY < rim.minY + RIM_TOLERANCE_MM,
    near: bounds.maxY > rim.maxY - RIM_TOLERANCE_MM,
  }
  return TABLE_SIDES.filter((side) => reaches[side])
}
