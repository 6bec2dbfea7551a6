import { pointDistanceMm, segmentCrossing } from '../geometry'
import type { Option } from './schema'

/** Cuts that meet nearer than this to an end of one of them only touch there: a crosscut that ends at a rip, mm. */
const TOUCH_MM = 5

interface CrossedCuts {
  readonly earlierId: string
  readonly laterId: string
}

/** Pairs of lines through the same piece that are drawn across each other. */
export function crossedCuts(cuts: Option['cuts']): readonly CrossedCuts[] {
  const lines = cuts.flatMap((cut) => (cut.kind === 'line' ? [cut] : []))
  return lines.flatMap((later, index) =>
    lines
      .slice(0, index)
      .filter((earlier) => {
        const at = segmentCrossing(earlier.from, earlier.to, later.from, later.to)
        const ends = [earlier.from, earlier.to, later.from, later.to]
        return (
          at !== null &&
          earlier.pieceId === later.pieceId &&
          ends.every((end) => pointDistanceMm(end, at) > TOUCH_MM)
        )
      })
      .map(({ id }) => ({ earlierId: id, laterId: later.id })),
  )
}
