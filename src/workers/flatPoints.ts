import { type PxPoint, pxPoint } from '../core/geometry'
import type { FlatPoints } from './traceProtocol'

/** Points as one list of numbers, x and y in turn; `scale` times as far from the corner. */
export function flatPoints(points: readonly PxPoint[], scale = 1): FlatPoints {
  const flat = new Float64Array(2 * points.length)
  for (const [n, [x, y]] of points.entries()) {
    flat[2 * n] = x * scale
    flat[2 * n + 1] = y * scale
  }
  return flat
}

/** The points of a list of numbers. */
export const pointsFromFlat = (flat: FlatPoints): readonly PxPoint[] =>
  Array.from({ length: flat.length >> 1 }, (_, n) => pxPoint(flat[2 * n] ?? 0, flat[2 * n + 1] ?? 0))
