import { pointDistanceMm, ringBounds, type Ring, type TablePoint, tablePoint } from '../../geometry'
import { clipSegment } from '../../drawing'
import type { PlacedPiece } from '../tableResult'

/** A straight edge of a laid piece, as far as it lies in the blank: what it is laid by. */
export interface LaidEdge {
  readonly from: TablePoint
  readonly to: TablePoint
  readonly lengthMm: number
}

/**
 * The edge that tells best where a piece lies: the longest straight one in the blank, which is the sawn one.
 * @param blank outline of the blank in the table frame, mm
 * @returns null when none of it lies in the blank; `from` is the end nearer to the start
 */
export function laidEdge({ whole }: Pick<PlacedPiece, 'whole'>, blank: Ring<TablePoint>): LaidEdge | null {
  const { minX, minY, maxX, maxY } = ringBounds(blank)
  const box = { xMm: minX, yMm: minY, widthMm: maxX - minX, heightMm: maxY - minY }
  let best: LaidEdge | null = null
  whole.outer.forEach((a, index) => {
    const inside = clipSegment([a, whole.outer[(index + 1) % whole.outer.length] ?? a], box)
    if (inside === null) return
    const lengthMm = pointDistanceMm(inside[0], inside[1])
    if (best !== null && lengthMm <= best.lengthMm) return
    const [from, to] = inside.toSorted((p, q) => p[0] - q[0]).map(([x, y]) => tablePoint(x, y))
    if (from !== undefined && to !== undefined) best = { from, to, lengthMm }
  })
  return best
}
