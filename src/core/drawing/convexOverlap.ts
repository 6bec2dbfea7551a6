import type { Point } from '../geometry'

/** Distances shorter than this are touching, not overlapping, mm: a tenth of a thin line. */
const TOUCH_MM = 0.01

/**
 * Whether two convex figures (turned boxes, segments) share more than an edge.
 * Method: separating axes: the upright ones first, because most figures of a sheet lie far apart, then the normals of
 * both figures' edges; a figure of one segment brings its normal, the other one its own.
 */
export const convexOverlap = (a: readonly Point[], b: readonly Point[]): boolean =>
  meetAlong(a, b, 1, 0) && meetAlong(a, b, 0, 1) && meetAcrossEdges(a, b, a) && meetAcrossEdges(a, b, b)

/** Whether no normal of the edges of a figure parts the two. */
function meetAcrossEdges(a: readonly Point[], b: readonly Point[], edgesOf: readonly Point[]): boolean {
  return edgesOf.every((point, k) => {
    const next = edgesOf[(k + 1) % edgesOf.length] ?? point
    const [dx, dy] = [next[0] - point[0], next[1] - point[1]]
    const length = Math.hypot(dx, dy)
    return length === 0 || meetAlong(a, b, -dy / length, dx / length)
  })
}

function meetAlong(a: readonly Point[], b: readonly Point[], axisX: number, axisY: number): boolean {
  let [aLow, aHigh, bLow, bHigh] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of a) {
    const place = x * axisX + y * axisY
    aLow = Math.min(aLow, place)
    aHigh = Math.max(aHigh, place)
  }
  for (const [x, y] of b) {
    const place = x * axisX + y * axisY
    bLow = Math.min(bLow, place)
    bHigh = Math.max(bHigh, place)
  }
  return aLow < bHigh - TOUCH_MM && bLow < aHigh - TOUCH_MM
}
