import { itemAt } from './itemAt'
import type { Point } from './point'
import type { Ring } from './region'
import { turnOf } from './sideOfLine'

/**
 * The convex hull of some points: the rubber band round them.
 * @param points mm, any number, in any order
 * @returns a positive ring of the hull's corners (points along its edges left out), starting at the one of least x; when
 *   the points lie on one line, its two ends; of one place, that point; of none, nothing
 * Method: monotone chain on sorted points with exact side tests. Rules: GEO-9.
 */
export function convexHull<P extends Point>(points: readonly P[]): Ring<P> {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const there = halfHull(sorted)
  const back = halfHull(sorted.toReversed())
  if (there.length < 2) return there
  return [...there.slice(0, -1), ...back.slice(0, -1)]
}

function halfHull<P extends Point>(sorted: readonly P[]): P[] {
  const hull: P[] = []
  for (const p of sorted) {
    const last = hull.at(-1)
    if (last !== undefined && last[0] === p[0] && last[1] === p[1]) continue
    while (hull.length > 1 && turnOf(itemAt(hull, hull.length - 2), itemAt(hull, hull.length - 1), p) <= 0)
      hull.pop()
    hull.push(p)
  }
  return hull
}
