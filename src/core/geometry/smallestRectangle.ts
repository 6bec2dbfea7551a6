import { InvariantError } from '../units'
import { brandedPoint } from './brandedPoint'
import { convexHull } from './convexHull'
import { itemAt, itemRound } from './itemAt'
import type { Point } from './point'
import { dotOf, subtractPoints } from './pointArithmetic'

/** A rectangle at any angle. */
export interface TurnedRectangle<P extends Point = Point> {
  readonly centre: P
  /** The longer side. */
  readonly lengthMm: number
  /** The shorter side. */
  readonly widthMm: number
  /** Direction of the longer side, x towards y; over −π/2, up to π/2. */
  readonly angleRad: number
}

/**
 * The rectangle of least area that holds some points, at whatever angle: "1840 by 410 mm" of an offcut.
 * @param points mm, e.g. an outline
 * @throws InvariantError when the points lie on one line
 * Method: one side of the answer lies along an edge of the convex hull (Freeman and Shapira 1975), so each is tried.
 */
export function smallestRectangle<P extends Point>(points: readonly P[]): TurnedRectangle<P> {
  const hull = convexHull(points)
  if (hull.length < 3)
    throw new InvariantError('no rectangle of points on one line', { points: points.length })
  return hull
    .map((from, i) => rectangleAlong(hull, from, itemRound(hull, i + 1)))
    .reduce((best, next) => (next.lengthMm * next.widthMm < best.lengthMm * best.widthMm ? next : best))
}

/** The least rectangle round the hull with a side along from–to. */
function rectangleAlong<P extends Point>(hull: readonly P[], from: P, to: P): TurnedRectangle<P> {
  const edge = subtractPoints<Point>(to, from)
  const edgeMm = Math.hypot(edge[0], edge[1])
  const u: Point = [edge[0] / edgeMm, edge[1] / edgeMm]
  const v: Point = [-u[1], u[0]]
  const along = extent(hull.map((p) => dotOf(subtractPoints<Point>(p, from), u)))
  const across = extent(hull.map((p) => dotOf(subtractPoints<Point>(p, from), v)))
  const centre = brandedPoint<P>(
    from[0] + u[0] * along.middle + v[0] * across.middle,
    from[1] + u[1] * along.middle + v[1] * across.middle,
  )
  const isAlongLonger = along.size >= across.size
  const [longer, shorter] = isAlongLonger ? [along, across] : [across, along]
  return {
    centre,
    lengthMm: longer.size,
    widthMm: shorter.size,
    angleRad: directionRad(isAlongLonger ? u : v),
  }
}

function extent(values: readonly number[]): { readonly size: number; readonly middle: number } {
  const sorted = values.toSorted((a, b) => a - b)
  const [least, most] = [itemAt(sorted, 0), itemAt(sorted, sorted.length - 1)]
  return { size: most - least, middle: (least + most) / 2 }
}

/** A direction and its opposite are the same side of a rectangle. */
function directionRad([x, y]: Point): number {
  const angleRad = Math.atan2(y, x)
  if (angleRad > Math.PI / 2) return angleRad - Math.PI
  return angleRad <= -Math.PI / 2 ? angleRad + Math.PI : angleRad
}
