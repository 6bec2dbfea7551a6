import { type Point, smallestRectangle } from '../geometry'
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
  const box = boxAlong(points, axisAngle(input, camera))
  const share = span.length >= 3 ? 1 : MARKS_TO_SLAB
  return {
    ...unknown,
    centreMm: box.centre,
    along: [Math.cos(box.angleRad), Math.sin(box.angleRad)],
    halfLengthMm: (box.lengthMm / 2) * share,
    halfWidthMm: (box.widthMm / 2) * share,
  }
}

/** Direction of the slab's length: the datum's where it is chalked. */
function axisAngle({ slabAxisPx }: ScaleInput, camera: Camera): number | null {
  if (!slabAxisPx) return null
  const [from, to] = slabAxisPx.map((px) => planePointFromPx(camera, px))
  const angle = from && to ? Math.atan2(to[1] - from[1], to[0] - from[0]) : Number.NaN
  return Number.isFinite(angle) ? angle : null
}

type Box = Pick<ReturnType<typeof smallestRectangle>, 'centre' | 'lengthMm' | 'widthMm' | 'angleRad'>

/** The rectangle round the points along a direction, or the smallest where none is known. */
function boxAlong(points: readonly Point[], angleRad: number | null): Box {
  if (angleRad === null) return smallestRectangle(points)
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)]
  const along = points.map((p) => p[0] * c + p[1] * s)
  const across = points.map((p) => p[1] * c - p[0] * s)
  const [a0, a1] = [Math.min(...along), Math.max(...along)]
  const [b0, b1] = [Math.min(...across), Math.max(...across)]
  const [a, b] = [(a0 + a1) / 2, (b0 + b1) / 2]
  return { centre: [a * c - b * s, a * s + b * c], lengthMm: a1 - a0, widthMm: b1 - b0, angleRad }
}

/** Marks stand a little inside the slab's ends and edges. */
const MARKS_TO_SLAB = 1.2
/** Flatter than this the points are a line and have no width. */
const LEAST_SPREAD = 0.01
