import type { Point } from '../../geometry'
import { type DrawItem, STROKES, type Segment } from '../../drawing'

/** Half of a mark's cross, mm of paper. */
export const MARK_ARM_MM = 2

/** A mark on the slab: a cross in a ring. */
export function markSymbol([x, y]: Point): readonly DrawItem[] {
  const segments: readonly Segment[] = [
    [
      [x - MARK_ARM_MM, y],
      [x + MARK_ARM_MM, y],
    ],
    [
      [x, y - MARK_ARM_MM],
      [x, y + MARK_ARM_MM],
    ],
  ]
  return [
    { kind: 'segments', segments, stroke: STROKES.opening },
    { kind: 'circle', centre: [x, y], radiusMm: MARK_ARM_MM * 0.6, stroke: STROKES.opening, fill: null },
  ]
}
