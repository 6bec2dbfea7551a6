import { orient2d } from 'robust-predicates'
import { InvariantError } from '../units'
import type { Point } from './point'

/**
 * Twice the signed area of the triangle from–to–p: positive when p lies to the right of from→to as seen on screen.
 * Its sign is exact for all doubles, and its value is good to the last digits.
 * The library's `orient2d` has the opposite sign of our shoelace (GEO-1); it is turned round here and nowhere else.
 * `0 −` instead of a minus sign: no −0.
 */
export const turnOf = (from: Point, to: Point, p: Point): number =>
  0 - orient2d(from[0], from[1], to[0], to[1], p[0], p[1])

/**
 * On which side of the line from→to a point lies.
 * @returns 1 to the right as seen on screen (y down), −1 to the left, 0 exactly on the line
 * Method: adaptive exact arithmetic (Shewchuk 1997, through robust-predicates). Rules: GEO-9.
 */
export const sideOfLine = (p: Point, from: Point, to: Point): -1 | 0 | 1 => {
  const turn = turnOf(from, to, p)
  return turn > 0 ? 1 : turn < 0 ? -1 : 0
}

/**
 * Distance from a point to the endless line through from and to.
 * @returns mm; positive to the right of from→to as seen on screen (y down), negative to the left; the sign is exact
 * @throws InvariantError when from and to are the same point
 * Rules: GEO-9.
 */
export function signedDistanceToLineMm(p: Point, from: Point, to: Point): number {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(lengthMm > 0)) throw new InvariantError('a line needs two different points', { from, to })
  return turnOf(from, to, p) / lengthMm
}
