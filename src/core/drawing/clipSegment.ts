import type { Box, Segment } from './sheet'

/**
 * The part of a straight line inside an upright box.
 * @returns null when no part of it is inside
 * Method: Liang–Barsky, the line's own parameter narrowed edge by edge. Rules: DRW-7.
 */
export function clipSegment([from, to]: Segment, box: Box): Segment | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const edges: readonly (readonly [direction: number, room: number])[] = [
    [-dx, from[0] - box.xMm],
    [dx, box.xMm + box.widthMm - from[0]],
    [-dy, from[1] - box.yMm],
    [dy, box.yMm + box.heightMm - from[1]],
  ]
  let [enters, leaves] = [0, 1]
  for (const [direction, room] of edges) {
    if (direction === 0 && room < 0) return null
    if (direction < 0) enters = Math.max(enters, room / direction)
    if (direction > 0) leaves = Math.min(leaves, room / direction)
  }
  if (enters >= leaves) return null
  return [
    [from[0] + dx * enters, from[1] + dy * enters],
    [from[0] + dx * leaves, from[1] + dy * leaves],
  ]
}
