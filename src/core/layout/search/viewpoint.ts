import { type Point, type Ring, ringAreaMm2, ringBounds } from '../../geometry'

/** A place from which all of an outline is seen, as far as may be from every side's line. */
export interface Viewpoint {
  readonly at: Point
  readonly distanceMm: number
}

/** A viewpoint nearer than this to a side's line is of no use, mm. */
const LEAST_DISTANCE_MM = 1

/**
 * The best place from which all of an outline is seen.
 * @param ring positive
 * @returns null when no place sees all of it
 * Method: such places lie inside every side's line; the one farthest from all of them by bisection on that distance, each
 * time cutting the bounds by every line moved inwards (Sutherland and Hodgman's clipping of a convex polygon).
 */
export function viewpoint(ring: Ring): Viewpoint | null {
  let best = seenFrom(ring, LEAST_DISTANCE_MM)
  if (best === null) return null
  let [low, high] = [LEAST_DISTANCE_MM, Math.sqrt(ringAreaMm2(ring))]
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2
    const at = seenFrom(ring, middle)
    if (at === null) high = middle
    else {
      best = at
      low = middle
    }
  }
  return { at: best, distanceMm: low }
}

/** A place at least so far inside every side's line; the mean of the corners of all such places. */
function seenFrom(ring: Ring, distanceMm: number): Point | null {
  const { minX, minY, maxX, maxY } = ringBounds(ring)
  let places: readonly Point[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ]
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a
    const lengthMm = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (lengthMm > 0) places = insideOf(places, a, b, distanceMm * lengthMm)
  })
  if (places.length === 0) return null
  const sum = places.reduce(([x, y], p): Point => [x + p[0], y + p[1]], [0, 0] as Point)
  return [sum[0] / places.length, sum[1] / places.length]
}

/** The part of a convex polygon where the cross product with the line a–b is at least a given value. */
function insideOf(places: readonly Point[], a: Point, b: Point, least: number): readonly Point[] {
  const inside = ([x, y]: Point): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) - least
  return places.flatMap((p, i): readonly Point[] => {
    const q = places[(i + 1) % places.length] ?? p
    const [atP, atQ] = [inside(p), inside(q)]
    const kept: readonly Point[] = atP >= 0 ? [p] : []
    if (atP >= 0 === atQ >= 0) return kept
    const t = atP / (atP - atQ)
    return [...kept, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]]
  })
}
