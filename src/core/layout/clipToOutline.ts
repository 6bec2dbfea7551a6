import { clipToBox } from '../cuts'
import {
  intersectRegions,
  type Point,
  type Region,
  regionBounds,
  type Ring,
  ringAreaMm2,
  ringBounds,
} from '../geometry'

/** What of some faces lies in an outline: by straight splits where the outline is an upright box, else by the kernel. */
export function clipToOutline<P extends Point>(
  regions: readonly Region<P>[],
  outline: Ring<P>,
): readonly Region<P>[] {
  const bounds = ringBounds(outline)
  const boxAreaMm2 = (bounds.maxX - bounds.minX) * (bounds.maxY - bounds.minY)
  const isBox = outline.length === 4 && Math.abs(ringAreaMm2(outline) - boxAreaMm2) < 1e-6 * boxAreaMm2
  return isBox ? clipToBox(regions, bounds) : intersectRegions(regions, [{ outer: outline, holes: [] }])
}

/** Whether two faces could share anything. */
export function boundsTouch(a: Region<Point>, b: Region<Point>): boolean {
  const [p, q] = [regionBounds(a), regionBounds(b)]
  return p.minX <= q.maxX && q.minX <= p.maxX && p.minY <= q.maxY && q.minY <= p.maxY
}
