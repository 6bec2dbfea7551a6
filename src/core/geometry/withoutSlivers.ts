import type { Point } from './point'
import type { Region } from './region'
import { ringAreaMm2 } from './ringArea'
import { SLIVER_AREA_MM2 } from './tolerance'

/**
 * The regions without the clipping kernel's rounding slivers: faces below SLIVER_AREA_MM2 are dropped and holes below it
 * are filled. The only place where area is let go; each item lost is smaller than 1 mm².
 * Rules: GEO-6.
 */
export function withoutSlivers<P extends Point>(regions: readonly Region<P>[]): readonly Region<P>[] {
  return regions
    .filter((region) => ringAreaMm2(region.outer) >= SLIVER_AREA_MM2)
    .map(({ outer, holes }) => ({
      outer,
      holes: holes.filter((hole) => ringAreaMm2(hole) <= -SLIVER_AREA_MM2),
    }))
}
