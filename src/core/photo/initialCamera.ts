import type { Point } from '../geometry'
import type { Camera } from './camera'
import { type Homography, homographyWeight } from './homography'

/** Diagonal of the 36 × 24 mm frame that "35 mm equivalent" focal lengths refer to. */
export const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24)
/** Main cameras of phones have 24 to 28 mm; the middle of that where the photo says nothing. */
export const USUAL_FOCAL_35MM = 26
/** Shortest and longest focal length that a photo of a slab is believed to be taken with, 35 mm equivalent. */
export const FOCAL_RANGE_35MM = { least: 13, most: 120 }

export interface ImageSize {
  readonly widthPx: number
  readonly heightPx: number
}

export const focalPxFrom35mm = (focal35mm: number, size: ImageSize): number =>
  (focal35mm / FULL_FRAME_DIAGONAL_MM) * Math.hypot(size.widthPx, size.heightPx)

export const focal35mmFromPx = (focalPx: number, size: ImageSize): number =>
  (focalPx / Math.hypot(size.widthPx, size.heightPx)) * FULL_FRAME_DIAGONAL_MM

/**
 * Focal length from one view of a plane, with square pixels and the optical axis at the picture's centre.
 * @param planeToPx plane (any unit) to pixels
 * @returns pixels, or null when the view is too square-on (or the numbers disagree) to tell
 * Method: the images of the plane's two axes are square and equally long seen from the camera (Zhang, A Flexible New
 * Technique for Camera Calibration, 2000, equations 3 and 4); both equations weighed by least squares.
 */
export function focalFromHomography(planeToPx: Homography, size: ImageSize): number | null {
  const h = centred(planeToPx, size)
  const square = { linear: h[0] * h[1] + h[3] * h[4], constant: h[6] * h[7] }
  const equal = {
    linear: h[0] ** 2 + h[3] ** 2 - h[1] ** 2 - h[4] ** 2,
    constant: h[6] ** 2 - h[7] ** 2,
  }
  const down = square.linear ** 2 + equal.linear ** 2
  const inverseSquare = -(square.linear * square.constant + equal.linear * equal.constant) / down
  return inverseSquare > 0 && Number.isFinite(inverseSquare) ? 1 / Math.sqrt(inverseSquare) : null
}

/** The same map with pixels counted from the picture's centre. */
function centred(h: Homography, size: ImageSize): Homography {
  const [cx, cy] = [size.widthPx / 2, size.heightPx / 2]
  return [
    h[0] - cx * h[6],
    h[1] - cx * h[7],
    h[2] - cx * h[8],
    h[3] - cy * h[6],
    h[4] - cy * h[7],
    h[5] - cy * h[8],
    h[6],
    h[7],
    h[8],
  ]
}

export interface InitialView {
  readonly camera: Camera
  /** Takes the plane of the homography to the camera's plane frame (origin at the camera's foot): a shift only. */
  readonly toFootFrame: (p: Point) => Point
}

/**
 * A first camera from a homography, to be refined by the adjustment.
 * @param planeToPx plane in mm, y down as seen, to pixels
 * @param focalPx   focal length to assume
 * @param anyPoint  a point of the plane that the photo shows
 * Method: columns of K⁻¹H made orthonormal, evenly between both.
 */
export function initialCamera(
  planeToPx: Homography,
  focalPx: number,
  anyPoint: Point,
  size: ImageSize,
): InitialView {
  const h = centred(planeToPx, size)
  const side = Math.sign(homographyWeight(h, anyPoint)) || 1
  const column = (c: 0 | 1 | 2): [number, number, number] => [
    ((h[c] ?? 0) / focalPx) * side,
    ((h[c + 3] ?? 0) / focalPx) * side,
    (h[c + 6] ?? 0) * side,
  ]
  const [b1, b2, b3] = [column(0), column(1), column(2)]
  const scale = 2 / (Math.hypot(...b1) + Math.hypot(...b2))
  const plus = unit(add(unit(b1), unit(b2)))
  const minusRaw = add(unit(b1), unit(b2), -1)
  const minus = unit(add(minusRaw, plus, -dot(minusRaw, plus)))
  const r1 = times(add(plus, minus), Math.SQRT1_2)
  const r2 = times(add(plus, minus, -1), Math.SQRT1_2)
  const r3 = cross(r1, r2)
  const t = times(b3, scale)
  const foot: Point = [-dot(r1, t), -dot(r2, t)]
  return {
    camera: {
      rotation: [r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]],
      heightMm: Math.abs(dot(r3, t)),
      lens: { focalPx, centrePx: [size.widthPx / 2, size.heightPx / 2], k1: 0, k2: 0 },
      surface: { centreMm: [0, 0], along: [1, 0], halfLengthMm: 1, halfWidthMm: 1, bowMm: 0, twistMm: 0 },
    },
    toFootFrame: (p) => [p[0] - foot[0], p[1] - foot[1]],
  }
}

type Vector = readonly [number, number, number]
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k]
const add = (a: Vector, b: Vector, k = 1): Vector => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]]
const unit = (a: Vector): Vector => times(a, 1 / Math.hypot(...a))
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
