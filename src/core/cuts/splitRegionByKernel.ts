import { intersectRegions, type Point, type Region, regionBounds } from '../geometry'
import type { Line } from './lineCrossings'

/** The same split by the general clipping kernel: slower, but sure where outlines touch the line or each other. */
export function splitRegionByKernel<P extends Point>(
  region: Region<P>,
  line: Line<P>,
): { readonly left: readonly Region<P>[]; readonly right: readonly Region<P>[] } {
  const reachMm = reachFrom(region, line)
  return {
    left: intersectRegions([region], [halfPlane(line, reachMm, -1)]),
    right: intersectRegions([region], [halfPlane(line, reachMm, 1)]),
  }
}

function reachFrom(region: Region, { from }: Line): number {
  const { minX, minY, maxX, maxY } = regionBounds(region)
  return (
    Math.abs(from[0] - minX) +
    Math.abs(from[0] - maxX) +
    Math.abs(from[1] - minY) +
    Math.abs(from[1] - maxY) +
    1
  )
}

/** A rectangle as large as needed on one side of the line; `side` +1 is right of the walk. */
function halfPlane<P extends Point>({ from, to }: Line<P>, reachMm: number, side: 1 | -1): Region<P> {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
  const corner = (along: number, across: number): P =>
    // A point of the line's own plane carries its brand.
    [from[0] + ux * along - uy * across, from[1] + uy * along + ux * across] as Point as P
  const near = [corner(-reachMm, 0), corner(reachMm, 0)] as const
  const far = [corner(reachMm, side * reachMm), corner(-reachMm, side * reachMm)] as const
  const ring = [...near, ...far]
  return { outer: side === 1 ? ring : ring.reverse(), holes: [] }
}
