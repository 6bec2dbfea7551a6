import type { Point } from '../geometry'
import { InvariantError, ok, problem, type Result } from '../units'
import { matrixFromRows } from './matrix'
import { singularValues } from './singularValues'

/** A projective map of the plane, 3×3 row by row, scaled so that its largest entry is of order 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number]

export interface PointPair {
  readonly from: Point
  readonly to: Point
}

/** Three points count as collinear when the triangle's height is below this share of its longest side. */
const COLLINEAR_SHARE = 1e-6
/** The null space is one vector only if the next singular value stands above this share of the greatest. */
const RANK_SHARE = 1e-7

/**
 * The homography that takes each pair's `from` to its `to`; least squares (algebraic) beyond four pairs.
 * @param pairs at least four, units are the caller's
 * @returns the map; problems `points-too-few` {count}, `points-on-one-line` {first, second, third} (indices),
 *          `points-not-finite`
 * Method: direct linear transform on normalised coordinates (Hartley and Zisserman, Multiple View Geometry, 2nd ed.,
 * algorithm 4.2), null vector by one-sided Jacobi. Exact on exact data to 1e-9.
 * Rules: PHO-1, PHO-2.
 */
export function homographyFromPoints(pairs: readonly PointPair[]): Result<Homography> {
  const refusal = refusePairs(pairs)
  if (refusal) return refusal
  const fromNormal = normalisation(pairs.map((p) => p.from))
  const toNormal = normalisation(pairs.map((p) => p.to))
  if (fromNormal === null || toNormal === null) return ON_ONE_LINE
  const rows = pairs.flatMap((p) =>
    equationsOf(applyHomography(fromNormal, p.from), applyHomography(toNormal, p.to)),
  )
  const { values, vectors } = singularValues(matrixFromRows(rows))
  const [greatest, , , , , , , eighth] = values
  if (!greatest || !eighth || eighth <= RANK_SHARE * greatest) return ON_ONE_LINE
  const middle = homographyFromArray(vectors[8] ?? [])
  return ok(scaled(composeHomographies(invertHomography(toNormal), composeHomographies(middle, fromNormal))))
}

const ON_ONE_LINE = problem('points-on-one-line', { first: 0, second: 1, third: 2 })

function refusePairs(pairs: readonly PointPair[]): ReturnType<typeof problem> | null {
  if (pairs.length < 4) return problem('points-too-few', { count: pairs.length })
  if (!pairs.every((p) => [...p.from, ...p.to].every(Number.isFinite))) return problem('points-not-finite')
  if (pairs.length > 4) return null
  const triple = collinearTriple(pairs.map((p) => p.from)) ?? collinearTriple(pairs.map((p) => p.to))
  return triple && problem('points-on-one-line', triple)
}

function equationsOf([x, y]: Point, [u, v]: Point): number[][] {
  return [
    [-x, -y, -1, 0, 0, 0, u * x, u * y, u],
    [0, 0, 0, -x, -y, -1, v * x, v * y, v],
  ]
}

/** Moves the centroid to the origin and the mean distance to √2; null when all points are one. */
function normalisation(points: readonly Point[]): Homography | null {
  const cx = points.reduce((sum, p) => sum + p[0], 0) / points.length
  const cy = points.reduce((sum, p) => sum + p[1], 0) / points.length
  const mean = points.reduce((sum, p) => sum + Math.hypot(p[0] - cx, p[1] - cy), 0) / points.length
  if (!(mean > 0)) return null
  const s = Math.SQRT2 / mean
  return [s, 0, -s * cx, 0, s, -s * cy, 0, 0, 1]
}

/** Indices of the first three points that lie on one line, or null. */
export function collinearTriple(
  points: readonly Point[],
): { first: number; second: number; third: number } | null {
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      for (let k = j + 1; k < points.length; k++) {
        if (tripleFlatness(points[i], points[j], points[k]) < COLLINEAR_SHARE)
          return { first: i, second: j, third: k }
      }
    }
  }
  return null
}

/** Height of the triangle over its longest side, as a share of that side: 0 for three points on a line. */
export function tripleFlatness(a: Point | undefined, b: Point | undefined, c: Point | undefined): number {
  if (!a || !b || !c) throw new InvariantError('three points are due')
  const doubleArea = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
  const longest = Math.max(
    Math.hypot(b[0] - a[0], b[1] - a[1]),
    Math.hypot(c[0] - a[0], c[1] - a[1]),
    Math.hypot(c[0] - b[0], c[1] - b[1]),
  )
  return longest > 0 ? doubleArea / (longest * longest) : 0
}

/** Where the map takes a point. Points on the map's horizon come out as ±Infinity or NaN; callers keep off it. */
export function applyHomography(h: Homography, [x, y]: Point): Point {
  const w = h[6] * x + h[7] * y + h[8]
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w]
}

/** Sign tells on which side of the horizon a point lies: equal signs are in one and the same view. */
export const homographyWeight = (h: Homography, [x, y]: Point): number => h[6] * x + h[7] * y + h[8]

export const homographyDeterminant = (h: Homography): number =>
  h[0] * (h[4] * h[8] - h[5] * h[7]) - h[1] * (h[3] * h[8] - h[5] * h[6]) + h[2] * (h[3] * h[7] - h[4] * h[6])

/**
 * The map back.
 * @throws InvariantError when the map is singular (it then flattens the plane to a line)
 * Method: adjugate, rescaled. Rules: PHO-1.
 */
export function invertHomography(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h
  const adjugate: Homography = [
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ]
  const determinant = homographyDeterminant(h)
  if (determinant === 0 || !Number.isFinite(determinant))
    throw new InvariantError('singular homography', { h })
  return scaled(adjugate)
}

/** First `inner`, then `outer`. */
export function composeHomographies(outer: Homography, inner: Homography): Homography {
  const row = (x: number, y: number, z: number): [number, number, number] => [
    x * inner[0] + y * inner[3] + z * inner[6],
    x * inner[1] + y * inner[4] + z * inner[7],
    x * inner[2] + y * inner[5] + z * inner[8],
  ]
  return [
    ...row(outer[0], outer[1], outer[2]),
    ...row(outer[3], outer[4], outer[5]),
    ...row(outer[6], outer[7], outer[8]),
  ]
}

const isHomography = (values: readonly number[]): values is Homography => values.length === 9

export function homographyFromArray(values: readonly number[]): Homography {
  if (!isHomography(values))
    throw new InvariantError('a homography has nine entries', { count: values.length })
  return values
}

/** Last entry 1 where that is possible, as handbooks print it; sign and scale carry no meaning. */
function scaled(h: Homography): Homography {
  const greatest = Math.max(...h.map(Math.abs))
  const divisor = Math.abs(h[8]) > 1e-12 * greatest ? h[8] : greatest
  return homographyFromArray(h.map((value) => value / divisor))
}
