import { type Point, type PxPoint, ringAreaMm2 } from '../geometry'
import { CAMERA_PARAMETER_COUNT, CAMERA_STEPS, cameraWith, thetaOf } from './adjustment'
import { type Camera, planePointFromPx } from './camera'
import { quadraticForm } from './matrix'
import type { SlabScale } from './scaleOfPhoto'

/** A figure with its standard deviation; the stated ± is two of them. */
export interface Measured {
  readonly value: number
  readonly sd: number
}

/** How a figure changes with each of θ: the order of `CAMERA_PARAMETERS`. */
export type ThetaGradient = readonly number[]

/**
 * Gradient in θ of anything that is computed from the camera.
 * @param quantity a smooth function of the camera, in any unit
 * @returns one derivative for each of θ, by central differences
 * Rules: PHO-15.
 */
export function thetaGradient(camera: Camera, quantity: (camera: Camera) => number): ThetaGradient {
  const theta = thetaOf(camera)
  return CAMERA_STEPS.map((step, i) => {
    const above = quantity(cameraWith(camera, theta.with(i, (theta[i] ?? 0) + step)))
    const below = quantity(cameraWith(camera, theta.with(i, (theta[i] ?? 0) - step)))
    return (above - below) / (2 * step)
  })
}

/** gᵀΣg: the variance that the scale gives a figure with this gradient. Rules: PHO-15. */
export function thetaVariance(scale: SlabScale, gradient: ThetaGradient): number {
  const n = CAMERA_PARAMETER_COUNT
  return quadraticForm({ rows: n, cols: n, values: Float64Array.from(scale.covariance) }, gradient)
}

/**
 * Length between two pixels on the face, with its standard deviation.
 * @param clickSdPx standard deviation of each of the two clicks, px of the photo
 * @returns mm; scale and clicks both counted, first order
 * Source: Criminisi, Reid and Zisserman, A Plane Measuring Device, BMVC 1997. Rules: PHO-15.
 */
export function measuredLengthMm(scale: SlabScale, a: PxPoint, b: PxPoint, clickSdPx: number): Measured {
  const lengthWith = (camera: Camera, p: Point, q: Point): number => {
    const [x, y] = [planePointFromPx(camera, p), planePointFromPx(camera, q)]
    return Math.hypot(x[0] - y[0], x[1] - y[1])
  }
  const { camera } = scale
  const fromScale = thetaVariance(
    scale,
    thetaGradient(camera, (c) => lengthWith(c, a, b)),
  )
  let fromClicks = 0
  for (const [dx, dy] of [
    [0.5, 0],
    [0, 0.5],
  ] as const) {
    const alongA =
      lengthWith(camera, [a[0] + dx, a[1] + dy], b) - lengthWith(camera, [a[0] - dx, a[1] - dy], b)
    const alongB =
      lengthWith(camera, a, [b[0] + dx, b[1] + dy]) - lengthWith(camera, a, [b[0] - dx, b[1] - dy])
    fromClicks += (alongA * alongA + alongB * alongB) * clickSdPx * clickSdPx
  }
  return { value: lengthWith(camera, a, b), sd: Math.sqrt(fromScale + fromClicks) }
}

/**
 * Area inside a ring of pixels on the face, with its standard deviation.
 * @param edgeSdPx          standard deviation of the traced edge across itself, px of the photo
 * @param correlationMm     length over which the edge's errors hang together, mm
 * @returns mm², unsigned; scale and edge both counted, first order
 * Method: gradient of the shoelace area; edge noise as independent stretches of the correlation length, each moving
 * its piece of edge as a whole. Rules: PHO-15.
 */
export function measuredAreaMm2(
  scale: SlabScale,
  ring: readonly PxPoint[],
  edgeSdPx: number,
  correlationMm: number,
): Measured {
  const onFace = (camera: Camera): readonly Point[] => ring.map((px) => planePointFromPx(camera, px))
  const areaOf = (camera: Camera): number => ringAreaMm2(onFace(camera))
  const { camera } = scale
  const value = areaOf(camera)
  const fromScale = thetaVariance(scale, thetaGradient(camera, areaOf))
  const fromEdge = ring.reduce((sum, from, i) => {
    const to = ring[(i + 1) % ring.length] ?? from
    return sum + edgeVariance(camera, from, to, edgeSdPx, correlationMm)
  }, 0)
  return { value: Math.abs(value), sd: Math.sqrt(fromScale + fromEdge) }
}

/** What one straight stretch of edge adds to the area's variance, mm⁴. */
function edgeVariance(
  camera: Camera,
  from: PxPoint,
  to: PxPoint,
  edgeSdPx: number,
  correlationMm: number,
): number {
  const [p, q] = [planePointFromPx(camera, from), planePointFromPx(camera, to)]
  const lengthMm = Math.hypot(q[0] - p[0], q[1] - p[1])
  if (lengthMm === 0) return 0
  // A stretch shorter than the correlation length moves with its neighbours: its share of one such move.
  return lengthMm * Math.max(correlationMm, lengthMm) * (edgeSdPx * acrossMm(camera, from, to)) ** 2
}

/** How far one pixel across an edge is on the face, mm. */
function acrossMm(camera: Camera, from: Point, to: Point): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const normal: Point = [(from[1] - to[1]) / length, (to[0] - from[0]) / length]
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const inside = planePointFromPx(camera, [mx + normal[0] / 2, my + normal[1] / 2])
  const outside = planePointFromPx(camera, [mx - normal[0] / 2, my - normal[1] / 2])
  const [p, q] = [planePointFromPx(camera, from), planePointFromPx(camera, to)]
  const edge = Math.hypot(q[0] - p[0], q[1] - p[1])
  const [ux, uy] = [(q[0] - p[0]) / edge, (q[1] - p[1]) / edge]
  return Math.abs((inside[1] - outside[1]) * ux - (inside[0] - outside[0]) * uy)
}
