import { pointDistanceMm, pxPoint, type PxPoint, type Ring } from '../geometry'
import { InvariantError } from '../units'

/** A ring cut at two of its places: both ways from one to the other, the places included at both ends. */
export interface CutRing {
  /** From the first place on, in the ring's order, to the second. */
  readonly there: readonly PxPoint[]
  /** On from the second, in the ring's order, back to the first. */
  readonly back: readonly PxPoint[]
}

interface RingPlace {
  readonly edge: number
  /** Share of the edge that lies before the place. */
  readonly share: number
  readonly at: PxPoint
}

/** @throws InvariantError when the ring has no points */
function nearestPlace(ring: Ring<PxPoint>, [x, y]: PxPoint): RingPlace {
  let best: RingPlace | null = null
  let least = Infinity
  for (const [edge, [x0, y0]] of ring.entries()) {
    const [x1, y1] = ring[(edge + 1) % ring.length] ?? [x0, y0]
    const lengthSq = (x1 - x0) ** 2 + (y1 - y0) ** 2
    const along = lengthSq === 0 ? 0 : ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / lengthSq
    const share = Math.min(1, Math.max(0, along))
    const at = pxPoint(x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
    const distanceSq = (at[0] - x) ** 2 + (at[1] - y) ** 2
    if (distanceSq >= least) continue
    least = distanceSq
    best = { edge, share, at }
  }
  if (best === null) throw new InvariantError('a ring needs points', { points: ring.length })
  return best
}

function between(ring: Ring<PxPoint>, from: RingPlace, to: RingPlace): readonly PxPoint[] {
  const isAhead = to.edge > from.edge || (to.edge === from.edge && to.share >= from.share)
  const count = to.edge - from.edge + (isAhead ? 0 : ring.length)
  const inner = Array.from({ length: count }, (_, n) => ring[(from.edge + 1 + n) % ring.length] ?? from.at)
  return withoutRepeats([from.at, ...inner, to.at])
}

const withoutRepeats = (line: readonly PxPoint[]): readonly PxPoint[] =>
  line.filter((at, n) => n === 0 || at[0] !== line[n - 1]?.[0] || at[1] !== line[n - 1]?.[1])

/** Cuts a ring at the places of it that are nearest to two points. */
export function cutRing(ring: Ring<PxPoint>, fromPx: PxPoint, toPx: PxPoint): CutRing {
  const from = nearestPlace(ring, fromPx)
  const to = nearestPlace(ring, toPx)
  const isOne = from.edge === to.edge && from.share === to.share
  const round = [from.at, ...ring.slice(from.edge + 1), ...ring.slice(0, from.edge + 1), from.at]
  return { there: between(ring, from, to), back: isOne ? withoutRepeats(round) : between(ring, to, from) }
}

/** Length of an open line, px. */
export const lineLengthPx = (line: readonly PxPoint[]): number =>
  line.reduce((sum, at, n) => sum + pointDistanceMm(line[n - 1] ?? at, at), 0)

/** The same cut, its shorter way first: that is the stretch that a maker means by its two ends. */
export function cutShortWay(ring: Ring<PxPoint>, fromPx: PxPoint, toPx: PxPoint): CutRing {
  const cut = cutRing(ring, fromPx, toPx)
  return lineLengthPx(cut.there) <= lineLengthPx(cut.back) ? cut : { there: cut.back, back: cut.there }
}

/** The ring that leads along a line and then along another from its end to its beginning. */
export const joinedRing = (line: readonly PxPoint[], back: readonly PxPoint[]): Ring<PxPoint> => [
  ...line,
  ...back.slice(1, -1),
]
