import { normaliseOutline, pointToSegmentDistanceMm, type PxPoint, type Ring } from '../geometry'
import type { Result } from '../units'
import { cutRing, cutShortWay, joinedRing, lineLengthPx } from './ringStretch'

const SAMPLES = 50

/** Mean distance of a line's points from another line. */
function meanDistance(line: readonly PxPoint[], other: readonly PxPoint[]): number {
  const stride = Math.max(1, Math.floor(line.length / SAMPLES))
  const samples = line.filter((_, n) => n % stride === 0)
  const distance = (at: PxPoint): number =>
    other.reduce(
      (least, to, n) => Math.min(least, pointToSegmentDistanceMm(at, other[n - 1] ?? to, to)),
      Infinity,
    )
  return samples.reduce((sum, at) => sum + distance(at), 0) / samples.length
}

/**
 * Redraws a stretch: a path takes the place of what leads from its beginning to its end along the ring. The path's own
 * ends are moved onto the ring.
 * @param ring photo pixels, positive
 * @param path in either direction, at least two points; of the two ways along the ring the nearer one is replaced, and
 *   the shorter one where both are as near
 * @returns the mended ring, positive; or the problem: `ring-crosses-itself`, `ring-too-few-points` or `ring-no-area`
 * Rules: TRC-12.
 */
export function redrawnStretch(ring: Ring<PxPoint>, path: readonly PxPoint[]): Result<Ring<PxPoint>> {
  const [first] = path
  const last = path.at(-1)
  if (first === undefined || last === undefined) return normaliseOutline(ring)
  const { there, back } = cutRing(ring, first, last)
  const far = [
    meanDistance(path, there) + meanDistance(there, path),
    meanDistance(path, back) + meanDistance(back, path),
  ]
  const [farThere = 0, farBack = 0] = far
  const isThere = farThere === farBack ? lineLengthPx(there) <= lineLengthPx(back) : farThere < farBack
  const inner = path.slice(1, -1)
  return normaliseOutline(
    isThere
      ? joinedRing([...there.slice(0, 1), ...inner, ...there.slice(-1)], back)
      : joinedRing([...back.slice(0, 1), ...inner.toReversed(), ...back.slice(-1)], there),
  )
}

/**
 * Draws the shorter way between two places of a ring straight, as for a sawn end.
 * @returns the mended ring, or the problem as in `redrawnStretch`
 * Rules: TRC-12.
 */
export function straightenedStretch(
  ring: Ring<PxPoint>,
  fromPx: PxPoint,
  toPx: PxPoint,
): Result<Ring<PxPoint>> {
  const { there, back } = cutShortWay(ring, fromPx, toPx)
  return normaliseOutline(joinedRing([...there.slice(0, 1), ...there.slice(-1)], back))
}
