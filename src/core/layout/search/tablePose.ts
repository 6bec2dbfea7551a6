import type { Isometry, Point } from '../../geometry'

/**
 * Pose of a rectangle's table frame in the slab frame.
 * @param pivot  mm in the slab frame
 * @param angleRad direction of the table's length
 * @param corner the table's own corner, mm along and across the length from the pivot
 * @param size   of the rectangle, mm
 * @returns angle over −π/2, up to π/2: turned end for end if need be, so that the table is not upside down
 */
export function rectanglePose(
  pivot: Point,
  angleRad: number,
  corner: Point,
  size: { readonly lengthMm: number; readonly widthMm: number },
): Isometry {
  const upright = angleRad - Math.PI * Math.ceil(angleRad / Math.PI - 0.5)
  const isTurned = Math.abs(Math.round((angleRad - upright) / Math.PI)) % 2 === 1
  const [u, v] = isTurned ? [-corner[0] - size.lengthMm, -corner[1] - size.widthMm] : corner
  const [cos, sin] = [Math.cos(upright), Math.sin(upright)]
  return {
    xMm: pivot[0] + u * cos - v * sin,
    yMm: pivot[1] + u * sin + v * cos,
    angleRad: upright,
    turnedOver: false,
  }
}
