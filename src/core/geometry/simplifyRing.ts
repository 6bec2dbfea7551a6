import { InvariantError } from '../units'
import { itemAt } from './itemAt'
import type { Point } from './point'
import { pointToSegmentDistanceMm } from './pointDistances'
import type { Ring } from './region'

/**
 * A ring with fewer vertices, all of them vertices of the given one.
 * @param ring        open list, mm
 * @param toleranceMm no dropped vertex is further than this from the edge that replaces it; ≥ 0
 * @returns at least three vertices (or the ring itself when it has no more), in order, sign kept for any ring that is
 *   wider than a few tolerances; a ring may touch or cross itself where it is narrower than that
 * @throws InvariantError when toleranceMm is negative or not finite
 * Method: Ramer–Douglas–Peucker between two fixed vertices, the one of least x and the one farthest from it: the answer
 * does not depend on where the list starts.
 */
export function simplifyRing<P extends Point>(ring: Ring<P>, toleranceMm: number): Ring<P> {
  if (!(toleranceMm >= 0) || !Number.isFinite(toleranceMm))
    throw new InvariantError('a tolerance is needed', { toleranceMm })
  if (ring.length <= 3) return ring
  const start = indexOfLeast(ring)
  const turned = [...ring.slice(start), ...ring.slice(0, start)]
  const first = itemAt(turned, 0)
  const closed = [...turned, first]
  const far = farthestFrom(closed, 0, closed.length - 1, first, first).index
  const keep = new Set([0, far])
  keepBetween(closed, 0, far, toleranceMm, keep)
  keepBetween(closed, far, closed.length - 1, toleranceMm, keep)
  if (keep.size === 2) keep.add(widestIndex(closed, far))
  return turned.filter((_, i) => keep.has(i))
}

function indexOfLeast(ring: Ring): number {
  let best = 0
  ring.forEach(([x, y], i) => {
    const [bestX, bestY] = itemAt(ring, best)
    if (x < bestX || (x === bestX && y < bestY)) best = i
  })
  return best
}

function keepBetween(
  points: readonly Point[],
  from: number,
  to: number,
  toleranceMm: number,
  keep: Set<number>,
) {
  const open: [number, number][] = [[from, to]]
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [i, j] = span
    const far = farthestFrom(points, i, j, itemAt(points, i), itemAt(points, j))
    if (far.distanceMm <= toleranceMm) continue
    keep.add(far.index)
    open.push([i, far.index], [far.index, j])
  }
}

/** The vertex strictly between i and j that is farthest from the segment a–b; distance −1 when there is none. */
function farthestFrom(points: readonly Point[], i: number, j: number, a: Point, b: Point) {
  let index = i
  let distanceMm = -1
  for (let k = i + 1; k < j; k += 1) {
    const candidateMm = pointToSegmentDistanceMm(itemAt(points, k), a, b)
    if (candidateMm > distanceMm) {
      distanceMm = candidateMm
      index = k
    }
  }
  return { index, distanceMm }
}

/** Everything was within the tolerance of the line between the two fixed vertices: the widest vertex keeps it a ring. */
function widestIndex(closed: readonly Point[], far: number): number {
  const [a, b] = [itemAt(closed, 0), itemAt(closed, far)]
  const [there, back] = [
    farthestFrom(closed, 0, far, a, b),
    farthestFrom(closed, far, closed.length - 1, a, b),
  ]
  return there.distanceMm > back.distanceMm ? there.index : back.index
}
