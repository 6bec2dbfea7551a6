import type { MiddlePose, WorthGradient } from './poseWorth'

const MOST_ROUNDS = 60
/** A step that gains less than this ends the climb, mm². */
const LEAST_GAIN_MM2 = 1e-3
const SUFFICIENT_GAIN = 1e-4

type Vector = readonly [number, number, number]
type Matrix = readonly [Vector, Vector, Vector]

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const times = (m: Matrix, v: Vector): Vector => [dot(m[0], v), dot(m[1], v), dot(m[2], v)]
const scaled = (v: Vector, k: number): Vector => [v[0] * k, v[1] * k, v[2] * k]
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

interface Climber {
  readonly pose: MiddlePose
  readonly worth: WorthGradient
}

/**
 * The best pose near a given one.
 * @param armMm turns are weighed by this arm, so that all three steps are lengths
 *
 * Method: quasi-Newton (BFGS) on the exact gradient with a backtracking line search; begins with steps of about 10 mm.
 */
export function climbPose(
  start: MiddlePose,
  armMm: number,
  worthAt: (pose: MiddlePose) => WorthGradient,
): Climber {
  let at: Climber = { pose: start, worth: worthAt(start) }
  let slope = slopeOf(at.worth, armMm)
  let inverse = identity(10 / Math.max(1e-9, Math.hypot(...slope)))
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const step = stepUp(at, times(inverse, slope), slope, armMm, worthAt)
    if (step === null) break
    const gainMm2 = step.to.worth.worthMm2 - at.worth.worthMm2
    const nextSlope = slopeOf(step.to.worth, armMm)
    inverse = updated(inverse, step.moved, minus(slope, nextSlope))
    at = step.to
    slope = nextSlope
    if (gainMm2 < LEAST_GAIN_MM2) break
  }
  return at
}

const slopeOf = ({ perXMm, perYMm, perRadMm2 }: WorthGradient, armMm: number): Vector => [
  perXMm,
  perYMm,
  perRadMm2 / armMm,
]

const identity = (k: number): Matrix => [
  [k, 0, 0],
  [0, k, 0],
  [0, 0, k],
]

/** The first of ever shorter steps that gains enough; null when none does. */
function stepUp(
  { pose, worth }: Climber,
  direction: Vector,
  slope: Vector,
  armMm: number,
  worthAt: (pose: MiddlePose) => WorthGradient,
): { readonly to: Climber; readonly moved: Vector } | null {
  const rise = dot(direction, slope)
  if (!(rise > 0)) return null
  for (let k = 1; k > 1e-6; k /= 2.5) {
    const moved = scaled(direction, k)
    const next = {
      xMm: pose.xMm + moved[0],
      yMm: pose.yMm + moved[1],
      angleRad: pose.angleRad + moved[2] / armMm,
    }
    const found = worthAt(next)
    if (found.worthMm2 > worth.worthMm2 + SUFFICIENT_GAIN * k * rise)
      return { to: { pose: next, worth: found }, moved }
  }
  return null
}

/** The inverse Hessian's update (Broyden, Fletcher, Goldfarb, Shanno); left alone where the curvature has the wrong sign. */
function updated(h: Matrix, moved: Vector, change: Vector): Matrix {
  const curvature = dot(moved, change)
  if (!(curvature > 1e-12)) return h
  const hy = times(h, change)
  const k = (1 + dot(change, hy) / curvature) / curvature
  const row = (i: 0 | 1 | 2): Vector => {
    const entry = (j: 0 | 1 | 2): number =>
      h[i][j] + k * moved[i] * moved[j] - (hy[i] * moved[j] + moved[i] * hy[j]) / curvature
    return [entry(0), entry(1), entry(2)]
  }
  return [row(0), row(1), row(2)]
}
