import type { Point } from '../geometry'
import type { CircleItem, DrawItem, Segment } from './sheet'

/** Corners of the many-sided figure that stands for a circle in tests for overlap; off by 0.5 % of the radius. */
const CIRCLE_SIDES = 32

function circlePoints({ centre, radiusMm }: CircleItem): readonly Point[] {
  return Array.from({ length: CIRCLE_SIDES }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / CIRCLE_SIDES
    return [centre[0] + radiusMm * Math.cos(angle), centre[1] + radiusMm * Math.sin(angle)]
  })
}

const openSegments = (points: readonly Point[]): readonly Segment[] =>
  points.slice(1).map((to, k): Segment => [points[k] ?? to, to])

const closedSegments = (points: readonly Point[]): readonly Segment[] =>
  points.map((from, k): Segment => [from, points[(k + 1) % points.length] ?? from])

/** Every straight line that an item draws on the sheet, mm; texts draw none. */
export function linesOf(item: DrawItem): readonly Segment[] {
  switch (item.kind) {
    case 'segments':
      return item.segments
    case 'polyline':
      return openSegments(item.points)
    case 'polygon':
      return item.rings.flatMap(closedSegments)
    case 'circle':
      return closedSegments(circlePoints(item))
    case 'text':
      return []
  }
}
