import type { Point } from '../geometry'
import { matrixFromRows } from './matrix'
import { median } from './pixelWindow'
import { singularValues } from './singularValues'

export interface Ellipse {
  readonly centre: Point
  /** Half axes, longer first. */
  readonly semiMajor: number
  readonly semiMinor: number
  /** Direction of the longer axis. */
  readonly angleRad: number
}

export interface EllipseFit {
  readonly ellipse: Ellipse
  /** rms distance of the points kept, in their unit. */
  readonly rms: number
  readonly kept: number
}

/** Points nearer than this are never left out. */
const FLOOR_PX = 0.05

/**
 * The ellipse through points with some outliers.
 * @returns null when they make no ellipse
 * Method: algebraic least squares on normalised points (null vector of the conic's design matrix), three rounds,
 * points beyond three times the median distance left out.
 */
export function fitEllipse(points: readonly Point[]): EllipseFit | null {
  let kept = points
  let answer: EllipseFit | null = null
  for (let round = 0; round < 3; round++) {
    const ellipse = kept.length >= 6 ? ellipseThrough(kept) : null
    if (ellipse === null) return null
    const distances = points.map((p) => Math.abs(radialDistance(ellipse, p)))
    const limit = Math.max(3 * median(distances), FLOOR_PX)
    kept = points.filter((_, i) => (distances[i] ?? 0) <= limit)
    const squares = distances.filter((d) => d <= limit).map((d) => d * d)
    answer = {
      ellipse,
      rms: Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length),
      kept: kept.length,
    }
  }
  return answer
}

/** Distance from the ellipse along the ray from its centre: outside positive. */
export function radialDistance({ centre, semiMajor, semiMinor, angleRad }: Ellipse, [x, y]: Point): number {
  const [dx, dy] = [x - centre[0], y - centre[1]]
  const along = dx * Math.cos(angleRad) + dy * Math.sin(angleRad)
  const across = dy * Math.cos(angleRad) - dx * Math.sin(angleRad)
  const share = Math.hypot(along / semiMajor, across / semiMinor)
  return share > 0 ? Math.hypot(dx, dy) * (1 - 1 / share) : -semiMinor
}

export function ellipsePoint({ centre, semiMajor, semiMinor, angleRad }: Ellipse, turn: number): Point {
  const [along, across] = [semiMajor * Math.cos(turn), semiMinor * Math.sin(turn)]
  return [
    centre[0] + along * Math.cos(angleRad) - across * Math.sin(angleRad),
    centre[1] + along * Math.sin(angleRad) + across * Math.cos(angleRad),
  ]
}

/** Unit vector square to the ellipse, outwards, at `ellipsePoint(ellipse, turn)`. */
export function ellipseNormal({ semiMajor, semiMinor, angleRad }: Ellipse, turn: number): Point {
  const [along, across] = [semiMinor * Math.cos(turn), semiMajor * Math.sin(turn)]
  const length = Math.hypot(along, across)
  return [
    (along * Math.cos(angleRad) - across * Math.sin(angleRad)) / length,
    (along * Math.sin(angleRad) + across * Math.cos(angleRad)) / length,
  ]
}

function ellipseThrough(points: readonly Point[]): Ellipse | null {
  const mx = points.reduce((sum, p) => sum + p[0], 0) / points.length
  const my = points.reduce((sum, p) => sum + p[1], 0) / points.length
  const spread = points.reduce((sum, p) => sum + Math.hypot(p[0] - mx, p[1] - my), 0) / points.length
  if (!(spread > 0)) return null
  const rows = points.map((p) => {
    const [x, y] = [(p[0] - mx) / spread, (p[1] - my) / spread]
    return [x * x, x * y, y * y, x, y, 1]
  })
  const ellipse = ellipseOfConic(singularValues(matrixFromRows(rows)).vectors[5] ?? [])
  return (
    ellipse && {
      centre: [mx + spread * ellipse.centre[0], my + spread * ellipse.centre[1]],
      semiMajor: spread * ellipse.semiMajor,
      semiMinor: spread * ellipse.semiMinor,
      angleRad: ellipse.angleRad,
    }
  )
}

/** a·x² + b·xy + c·y² + d·x + e·y + f = 0 as an ellipse; null when it is none. */
function ellipseOfConic([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0]: readonly number[]): Ellipse | null {
  const determinant = 4 * a * c - b * b
  if (!(determinant > 0)) return null
  const centre: Point = [(b * e - 2 * c * d) / determinant, (b * d - 2 * a * e) / determinant]
  // Value at the centre; the quadratic form over −value is 1 on the ellipse.
  const level = -(f + (d * centre[0] + e * centre[1]) / 2)
  const half = Math.hypot(a - c, b) / 2
  const curvatures = [((a + c) / 2 + half) / level, ((a + c) / 2 - half) / level]
  const [least, greatest] = [Math.min(...curvatures), Math.max(...curvatures)]
  if (!(least > 0)) return null
  // Direction of the smaller curvature is that of the longer axis.
  const steep = Math.atan2(b, a - c) / 2
  return {
    centre,
    semiMajor: 1 / Math.sqrt(least),
    semiMinor: 1 / Math.sqrt(greatest),
    angleRad: level > 0 ? steep + Math.PI / 2 : steep,
  }
}
