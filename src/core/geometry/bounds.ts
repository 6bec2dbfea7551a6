import { InvariantError } from '../units'
import type { Point } from './point'
import type { Region } from './region'

/** An upright box, mm. */
export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/**
 * Smallest upright box round some points.
 * @param ring points, mm; open or closed, any order
 * @throws InvariantError on an empty list: no box is round nothing
 */
export function ringBounds(ring: readonly Point[]): Bounds {
  if (ring.length === 0) throw new InvariantError('no bounds of an empty ring')
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of ring) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { minX, minY, maxX, maxY }
}

/** Smallest upright box round a region: its outer ring's. */
export const regionBounds = (region: Region): Bounds => ringBounds(region.outer)

/** Smallest upright box round all regions of a list. @throws InvariantError on an empty list */
export const regionsBounds = (regions: readonly Region[]): Bounds =>
  ringBounds(regions.flatMap((region) => region.outer))
