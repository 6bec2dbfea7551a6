import type { PxPoint } from '../geometry'

/** What the maker marked: a straight stroke, or a tap when both ends are one. */
export interface Stroke {
  readonly kind: 'wood' | 'not-wood'
  readonly fromPx: PxPoint
  readonly toPx: PxPoint
}

/** Places along a stroke, no farther apart than `stepPx`. */
export function strokePlaces(stroke: Stroke, stepPx: number): readonly (readonly [number, number])[] {
  const [x0, y0] = stroke.fromPx
  const [x1, y1] = stroke.toPx
  const count = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / stepPx))
  return Array.from({ length: count + 1 }, (_, i) => [
    x0 + ((x1 - x0) * i) / count,
    y0 + ((y1 - y0) * i) / count,
  ])
}
