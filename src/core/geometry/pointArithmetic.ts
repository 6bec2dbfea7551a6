import { brandedPoint } from './brandedPoint'
import type { Point } from './point'

/** Distance between two points, in the units of their plane (mm). Math.hypot: no overflow, no loss near zero. */
export const pointDistanceMm = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** a + b, in the plane of a. */
export const addPoints = <P extends Point>(a: P, b: Point): P => brandedPoint<P>(a[0] + b[0], a[1] + b[1])

/** a − b, in the plane of a: the step that leads from b to a. */
export const subtractPoints = <P extends Point>(a: P, b: Point): P =>
  brandedPoint<P>(a[0] - b[0], a[1] - b[1])

/** p · k, measured from the origin of p's plane. */
export const scalePoint = <P extends Point>(p: P, k: number): P => brandedPoint<P>(p[0] * k, p[1] * k)

/** Scalar product a · b (mm²). */
export const dotOf = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]

/**
 * Cross product aₓ·b_y − a_y·bₓ (mm²): positive when b lies to the right of a as seen on screen (y is down).
 * Rounded; where only the sign matters use `sideOfLine`, which is exact.
 */
export const crossOf = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0]

/** The point halfway between a and b, in the plane of a. */
export const midpoint = <P extends Point>(a: P, b: Point): P =>
  brandedPoint<P>(a[0] + (b[0] - a[0]) / 2, a[1] + (b[1] - a[1]) / 2)
