import { smallestRectangle } from '../geometry'
import { type Camera, planePointFromPx, type Surface } from './camera'
import { tripleFlatness } from './homography'
import type { ScaleInput } from './scaleInput'
import type { ScaleNetwork } from './scaleNetwork'

/** The slab's middle, length and width as far as the photo tells: from its outline, or else from the marks. */
export function startingSurface(input: ScaleInput, network: ScaleNetwork, camera: Camera): Surface {
  const span = input.slabSpanPx ?? []
  const seen = span.length >= 3 ? span : network.marks.map((m) => m.px)
  const points = seen.map((px) => planePointFromPx(camera, px)).filter((p) => p.every(Number.isFinite))
  const unknown: Surface = {
    centreMm: points[0] ?? [0, 0],
    along: [1, 0],
    halfLengthMm: camera.heightMm,
    halfWidthMm: camera.heightMm,
    bowMm: 0,
    twistMm: 0,
  }
  if (points.length < 3 || points.every((p) => tripleFlatness(points[0], points[1], p) < LEAST_SPREAD))
    return unknown
  const box = smallestRectangle(points)
  const share = span.length >= 3 ? 1 : MARKS_TO_SLAB
  return {
    ...unknown,
    centreMm: box.centre,
    along: [Math.cos(box.angleRad), Math.sin(box.angleRad)],
    halfLengthMm: (box.lengthMm / 2) * share,
    halfWidthMm: (box.widthMm / 2) * share,
  }
}

/** Marks stand a little inside the slab's ends and edges. */
const MARKS_TO_SLAB = 1.2
/** Flatter than this the points are a line and have no width. */
const LEAST_SPREAD = 0.01
