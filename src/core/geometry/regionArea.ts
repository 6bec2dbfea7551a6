import type { Region } from './region'
import { ringAreaMm2 } from './ringArea'

/**
 * Area of one region: its outer ring less its holes.
 * @returns mm²; holes are negative rings (README), so the signed areas are simply added
 * Rules: GEO-3.
 */
export const regionAreaMm2 = (region: Region): number =>
  region.holes.reduce((sum, hole) => sum + ringAreaMm2(hole), ringAreaMm2(region.outer))

/** Area of a face in several parts, mm². The parts must not overlap (unite them first). Rules: GEO-3. */
export const regionsAreaMm2 = (regions: readonly Region[]): number =>
  regions.reduce((sum, region) => sum + regionAreaMm2(region), 0)
