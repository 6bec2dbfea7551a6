import { itemRound } from './itemAt'
import { pointDistanceMm } from './pointArithmetic'
import type { Ring } from './region'

/**
 * Length all round a ring, the closing edge included.
 * @param ring open list, mm
 * @returns mm; 0 for no or one point, twice the distance for two
 */
export function ringPerimeterMm(ring: Ring): number {
  return ring.reduce((sum, point, i) => sum + pointDistanceMm(point, itemRound(ring, i + 1)), 0)
}
