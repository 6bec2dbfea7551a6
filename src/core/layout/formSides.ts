import { pointDistanceMm, type Region, type Ring, ringBounds, type TablePoint } from '../geometry'
import type { Gap } from './gaps'
import { RIM_TOLERANCE_MM, sidesReached } from './sidesReached'
import { type SideChoices, TABLE_SIDES, type TableSide } from './tableSides'

/** A side of the form, as long as the side of the blank that it stands along. */
export interface FormSide {
  readonly side: TableSide
  readonly lengthMm: number
}

/**
 * Where the form stands: along every side of the blank on which a gap to be filled opens, never along a live edge.
 * A side that is wood from end to end, or a kept edge, needs none.
 * Rules: LAY-42.
 */
export function formSides(
  gaps: readonly Gap[],
  blank: Ring<TablePoint>,
  sides: SideChoices,
): readonly FormSide[] {
  const rim = ringBounds(blank)
  const open = new Set(
    gaps.filter(({ kind }) => kind === 'edge').flatMap(({ region }) => sidesReached(region, rim)),
  )
  return TABLE_SIDES.filter((side) => open.has(side) && sides[side].finish !== 'live').map((side) => ({
    side,
    lengthMm: side === 'start' || side === 'end' ? rim.maxY - rim.minY : rim.maxX - rim.minX,
  }))
}

/**
 * Length of wood round a gap: its whole edge less what lies on the rim of the blank, where the form is.
 * @returns mm
 * Rules: LAY-43.
 */
export function woodEdgeMm(region: Region<TablePoint>, blank: Ring<TablePoint>): number {
  const rim = ringBounds(blank)
  const isOn = (value: number, line: number): boolean => Math.abs(value - line) < RIM_TOLERANCE_MM
  const isOnRim = (a: TablePoint, b: TablePoint): boolean =>
    [rim.minX, rim.maxX].some((x) => isOn(a[0], x) && isOn(b[0], x)) ||
    [rim.minY, rim.maxY].some((y) => isOn(a[1], y) && isOn(b[1], y))
  return [region.outer, ...region.holes].reduce(
    (sum, ring) =>
      sum +
      ring.reduce((length, a, index) => {
        const b = ring[(index + 1) % ring.length] ?? a
        return isOnRim(a, b) ? length : length + pointDistanceMm(a, b)
      }, 0),
    0,
  )
}
