import { type Bounds, type Ring, ringBounds, type TablePoint } from '../geometry'
import { finishedRing, rectangleRing, type TableOutline } from './finishedRing'
import type { SideChoices } from './tableSides'

/**
 * The blank as it is cast: the finished outline's rectangle with each side's oversize. A kept side has none; there the
 * blank ends where the given wood ends, plus a little, so that the whole live edge lies in it.
 * @param wood bounds of the wood in the table frame, mm; needed only where a live edge is kept
 */
export function blankRing(outline: TableOutline, sides: SideChoices, wood: Bounds): Ring<TablePoint> {
  const { minX, minY, maxX, maxY } = ringBounds(finishedRing(outline))
  const beyond = 10
  return rectangleRing(
    sides.start.finish === 'live' ? Math.min(minX, wood.minX - beyond) : minX - sides.start.oversizeMm,
    sides.far.finish === 'live' ? Math.min(minY, wood.minY - beyond) : minY - sides.far.oversizeMm,
    sides.end.finish === 'live' ? Math.max(maxX, wood.maxX + beyond) : maxX + sides.end.oversizeMm,
    sides.near.finish === 'live' ? Math.max(maxY, wood.maxY + beyond) : maxY + sides.near.oversizeMm,
  )
}
