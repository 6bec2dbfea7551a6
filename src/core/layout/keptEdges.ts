import { type Bounds, type Region, type Ring, ringBounds, type TablePoint } from '../geometry'
import { distanceFromSide } from './sideGaps'
import { TABLE_SIDES, type SideChoices, type TableSide } from './tableSides'

export interface KeptEdge {
  readonly side: TableSide
  /** From the opposite side (or the opposite live edge) to the outermost wood, mm. */
  readonly leastWidthMm: number
  readonly meanWidthMm: number
  /** Where it is narrowest: distance along the side from the table's start or far corner, mm. */
  readonly leastAtMm: number
}

/** Widths are read at this spacing along the side, mm. A live edge bends by far less between two readings. */
const STATION_STEP_MM = 5

const OPPOSITE: Readonly<Record<TableSide, TableSide>> = {
  start: 'end',
  end: 'start',
  far: 'near',
  near: 'far',
}

/**
 * Least and mean width at each side whose live edge is kept.
 * @param wood the slab's own wood in the blank, mm in the table frame
 * Method: at stations along the finished side, the outermost wood on each kept side; a station without wood counts as no
 * width.
 * Rules: LAY-6.
 */
export function keptEdgesOf(
  finished: Ring<TablePoint>,
  sides: SideChoices,
  wood: readonly Region<TablePoint>[],
): readonly KeptEdge[] {
  const bounds = ringBounds(finished)
  return TABLE_SIDES.filter((side) => sides[side].finish === 'live').map((side) => {
    const opposite = OPPOSITE[side]
    const acrossMm = acrossTable(bounds, side)
    const outer = reachBeyond(bounds, side, wood)
    const other = sides[opposite].finish === 'live' ? reachBeyond(bounds, opposite, wood) : null
    const widths = outer.map((reachMm, index) => {
      const otherMm = other === null ? 0 : (other[index] ?? -acrossMm)
      return Math.max(0, acrossMm + reachMm + otherMm)
    })
    const leastWidthMm = Math.min(...widths)
    return {
      side,
      leastWidthMm,
      meanWidthMm: widths.reduce((sum, width) => sum + width, 0) / widths.length,
      leastAtMm: widths.indexOf(leastWidthMm) * STATION_STEP_MM,
    }
  })
}

const isAlongX = (side: TableSide): boolean => side === 'far' || side === 'near'

const acrossTable = ({ minX, minY, maxX, maxY }: Bounds, side: TableSide): number =>
  isAlongX(side) ? maxY - minY : maxX - minX

/** At each station, how far the outermost wood reaches beyond the side (negative: stops short), mm. */
function reachBeyond(
  bounds: Bounds,
  side: TableSide,
  wood: readonly Region<TablePoint>[],
): readonly number[] {
  const axis = isAlongX(side) ? 0 : 1
  const from = axis === 0 ? bounds.minX : bounds.minY
  const lengthMm = (axis === 0 ? bounds.maxX : bounds.maxY) - from
  const count = Math.floor(lengthMm / STATION_STEP_MM) + 1
  const reach = new Array<number>(count).fill(-acrossTable(bounds, side))
  for (const { outer } of wood) {
    outer.forEach((a, index) => {
      const b = outer[(index + 1) % outer.length] ?? a
      markReach(reach, { a, b, axis, from }, (point) => -distanceFromSide(point, bounds, side))
    })
  }
  return reach
}

function markReach(
  reach: number[],
  edge: { readonly a: TablePoint; readonly b: TablePoint; readonly axis: 0 | 1; readonly from: number },
  reachAt: (point: TablePoint) => number,
): void {
  const [s, e] = [edge.a[edge.axis] - edge.from, edge.b[edge.axis] - edge.from]
  const [low, high] = [Math.min(s, e), Math.max(s, e)]
  const first = Math.max(0, Math.ceil(low / STATION_STEP_MM))
  const last = Math.min(reach.length - 1, Math.floor(high / STATION_STEP_MM))
  const [reachA, reachB] = [reachAt(edge.a), reachAt(edge.b)]
  for (let station = first; station <= last; station++) {
    const share = e === s ? 0 : (station * STATION_STEP_MM - s) / (e - s)
    reach[station] = Math.max(reach[station] ?? -Infinity, reachA + (reachB - reachA) * share)
  }
}
