import { composeIsometries, type Isometry, type Point } from '../../core/geometry'

/** The pose moved in the frame in which it lies, mm. */
export const movedPose = (pose: Isometry, dxMm: number, dyMm: number): Isometry => ({
  ...pose,
  xMm: pose.xMm + dxMm,
  yMm: pose.yMm + dyMm,
})

const shift = ([xMm, yMm]: Point, sign: 1 | -1): Isometry => ({
  xMm: sign * xMm,
  yMm: sign * yMm,
  angleRad: 0,
  turnedOver: false,
})

const about = (pivot: Point, change: Isometry): Isometry =>
  composeIsometries(shift(pivot, 1), composeIsometries(change, shift(pivot, -1)))

/** The pose turned about a point of the frame in which it lies; that point stays. Positive: right-hand turn on screen. */
export const turnedPose = (pose: Isometry, pivot: Point, angleRad: number): Isometry =>
  composeIsometries(about(pivot, { xMm: 0, yMm: 0, angleRad, turnedOver: false }), pose)

/** The pose turned over as one turns a board towards oneself: left stays left, the pivot stays. */
export const turnedOverPose = (pose: Isometry, pivot: Point): Isometry =>
  composeIsometries(about(pivot, { xMm: 0, yMm: 0, angleRad: 0, turnedOver: true }), pose)

/** Angle, radians, by which one turns from one point to another as seen from the pivot, within ±π. */
export function turnBetween(pivot: Point, from: Point, to: Point): number {
  const [ax, ay] = [from[0] - pivot[0], from[1] - pivot[1]]
  const [bx, by] = [to[0] - pivot[0], to[1] - pivot[1]]
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
}
