import type { Point } from '../geometry'
import type { PolygonItem } from './sheet'

/** Length of an arrow head on paper, mm, and the half of its width: filled, 15° as ISO 129-1 shows it. */
export const ARROW_MM = 2.6
const HALF_WIDTH_MM = ARROW_MM * Math.tan((7.5 * Math.PI) / 180)

/** A filled arrow head with its tip at a point; `towards` is the direction that it points in. */
export function arrowHead(tip: Point, towards: Point, lengthMm = ARROW_MM): PolygonItem {
  const size = Math.hypot(towards[0], towards[1])
  const [ux, uy] = size === 0 ? [1, 0] : [towards[0] / size, towards[1] / size]
  const half = (HALF_WIDTH_MM * lengthMm) / ARROW_MM
  const [bx, by] = [tip[0] - ux * lengthMm, tip[1] - uy * lengthMm]
  return {
    kind: 'polygon',
    rings: [[tip, [bx - uy * half, by + ux * half], [bx + uy * half, by - ux * half]]],
    stroke: null,
    fill: 'black',
  }
}
