import { type Bounds, type Region, type Ring, ringBounds, type TablePoint } from '../geometry'
import { type Columns, columnSpans } from './columnSpans'
import { isAlongX, TABLE_SIDES, type SideChoices, type TableSide } from './tableSides'

export interface KeptEdge {
  readonly side: TableSide
  /** From the opposite side (or the opposite live edge) to the outermost wood, mm. */
  readonly leastWidthMm: number
  readonly meanWidthMm: number
  /** Where it is narrowest: distance along the side from the table's start or far corner, mm. */
  readonly leastAtMm: number
}

/** Widths are read at this spacing along the side, mm. A live edge bends by far less between two readings. */
const COLUMN_STEP_MM = 5

/**
 * Least and mean width at each side whose live edge is kept.
 * @param wood the slab's own wood in the blank, mm in the table frame
 * Method: in columns square to the side, from the opposite side (or the outermost wood there, where that edge is kept
 * too) to the outermost wood; a column without wood counts as no width.
 * Rules: LAY-6.
 */
export function keptEdgesOf(
  finished: Ring<TablePoint>,
  sides: SideChoices,
  wood: readonly Region<TablePoint>[],
): readonly KeptEdge[] {
  const bounds = ringBounds(finished)
  return TABLE_SIDES.filter((side) => sides[side].finish === 'live').map((side) => {
    const columns = columnSpans(wood, bounds, isAlongX(side) ? 0 : 1, COLUMN_STEP_MM)
    const widths = columnWidths(columns, bounds, side, sides)
    const leastWidthMm = Math.min(...widths)
    const leastAt = columns.at[widths.indexOf(leastWidthMm)] ?? 0
    return {
      side,
      leastWidthMm,
      meanWidthMm: widths.reduce((sum, width) => sum + width, 0) / widths.length,
      leastAtMm: leastAt - (isAlongX(side) ? bounds.minX : bounds.minY),
    }
  })
}

function columnWidths(
  { spans }: Columns,
  { minX, minY, maxX, maxY }: Bounds,
  side: TableSide,
  sides: SideChoices,
): readonly number[] {
  const [low, high] = isAlongX(side) ? [minY, maxY] : [minX, maxX]
  const [lowSide, highSide] = isAlongX(side) ? (['far', 'near'] as const) : (['start', 'end'] as const)
  return spans.map((column) => {
    const from = sides[lowSide].finish === 'live' ? column[0]?.[0] : low
    const to = sides[highSide].finish === 'live' ? column.at(-1)?.[1] : high
    return from === undefined || to === undefined ? 0 : Math.max(0, to - from)
  })
}
