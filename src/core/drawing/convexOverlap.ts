import type { Point } from '../geometry'

/** Distances shorter than this are touching, not overlapping, mm: a tenth of a thin line. */
const TOUCH_MM = 0.01

function extentAlong(points: readonly Point[], axis: Point): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity]
  for (const [x, y] of points) {
    const place = x * axis[0] + y * axis[1]
    low = Math.min(low, place)
    high = Math.max(high, place)
  }
  return [low, high]
}

/** Unit normals of the edges of a convex figure (a segment gives its own normal and direction). */
function axesOf(points: readonly Point[]): readonly Point[] {
  return points.flatMap((point, k): readonly Point[] => {
    const next = points[(k + 1) % points.length] ?? point
    const [dx, dy] = [next[0] - point[0], next[1] - point[1]]
    const length = Math.hypot(dx, dy)
    return length === 0 ? [] : [[-dy / length, dx / length]]
  })
}

/**
 * Whether two convex figures (turned boxes, segments) share more than an edge.
 * Method: separating axes; a figure of one segment brings its normal, the other one its own.
 */
export function convexOverlap(a: readonly Point[], b: readonly Point[]): boolean {
  if (!UPRIGHT_AXES.every((axis) => meetAlong(a, b, axis))) return false
  return [...axesOf(a), ...axesOf(b)].every((axis) => meetAlong(a, b, axis))
}

/** Looked at first: most figures of a sheet lie far apart. */
const UPRIGHT_AXES: readonly Point[] = [
  [1, 0],
  [0, 1],
]

function meetAlong(a: readonly Point[], b: readonly Point[], axis: Point): boolean {
  const [aLow, aHigh] = extentAlong(a, axis)
  const [bLow, bHigh] = extentAlong(b, axis)
  return aLow < bHigh - TOUCH_MM && bLow < aHigh - TOUCH_MM
}
