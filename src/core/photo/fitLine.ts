import type { Point } from '../geometry'
import { median } from './pixelWindow'

/** A straight line in the picture: through `at`, along the unit vector `along`. */
export interface FittedLine {
  readonly at: Point
  readonly along: Point
  /** rms distance of the points kept. */
  readonly rms: number
  readonly kept: number
}

/**
 * The straight line through points with some outliers; null for fewer than two.
 * Method: principal axis, three rounds, points beyond three times the median distance (and `floorPx`) left out.
 */
export function fitLine(points: readonly Point[], floorPx = 0.3): FittedLine | null {
  let kept = points
  let line: FittedLine | null = null
  for (let round = 0; round < 4; round++) {
    line = principalAxis(kept)
    if (line === null) return null
    const fitted = line
    const distances = points.map((p) => Math.abs(distanceToLine(fitted, p)))
    const limit = Math.max(3 * median(distances), floorPx)
    kept = points.filter((_, i) => (distances[i] ?? 0) <= limit)
  }
  return line
}

/** Signed: positive to the right of the line's direction as seen on screen, y down. */
export const distanceToLine = ({ at, along }: FittedLine, [x, y]: Point): number =>
  (y - at[1]) * along[0] - (x - at[0]) * along[1]

function principalAxis(points: readonly Point[]): FittedLine | null {
  if (points.length < 2) return null
  const mx = points.reduce((sum, p) => sum + p[0], 0) / points.length
  const my = points.reduce((sum, p) => sum + p[1], 0) / points.length
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const line = {
    at: [mx, my] as const,
    along: [Math.cos(angle), Math.sin(angle)] as const,
    rms: 0,
    kept: points.length,
  }
  const squares = points.reduce((sum, p) => sum + distanceToLine(line, p) ** 2, 0)
  return { ...line, rms: Math.sqrt(squares / points.length) }
}

/** Where two lines meet; null when they are within about 6° of parallel. */
export function meetingPoint(a: FittedLine, b: FittedLine): Point | null {
  const cross = a.along[0] * b.along[1] - a.along[1] * b.along[0]
  if (Math.abs(cross) < 0.1) return null
  const s = ((b.at[0] - a.at[0]) * b.along[1] - (b.at[1] - a.at[1]) * b.along[0]) / cross
  return [a.at[0] + s * a.along[0], a.at[1] + s * a.along[1]]
}
