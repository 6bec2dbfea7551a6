import { type Point, type PxPoint, pxPoint } from '../geometry'
import type { Homography } from './homography'
import type { Rotation } from './rotation'

/**
 * A phone camera looking at the slab. The plane frame: mm, x right and y down as the camera sees the face, z into the
 * slab; its origin is the camera's foot, the point of the slab's plane straight below (square to it) the lens.
 */
export interface Camera {
  /** Turns plane-frame directions into camera directions (x right, y down, z forward), row by row. */
  readonly rotation: Rotation
  /** Distance of the lens from the slab's plane, mm. */
  readonly heightMm: number
  readonly lens: Lens
  readonly surface: Surface
}

/** u = f·x·(1 + k1·r² + k2·r⁴) + cx with x, y the pinhole's normalised coordinates and r² = x² + y². */
export interface Lens {
  readonly focalPx: number
  readonly centrePx: Point
  readonly k1: number
  readonly k2: number
}

/** How the face departs from its plane. Heights are above the plane, towards the camera. */
export interface Surface {
  readonly centreMm: Point
  /** Unit vector along the slab's length. */
  readonly along: Point
  readonly halfLengthMm: number
  readonly halfWidthMm: number
  /** How much the middle stands above the line through both ends (crowned: positive). */
  readonly bowMm: number
  /** How much the corner at +length, +width stands above the mean plane; the other corners by turns. */
  readonly twistMm: number
}

/** Height of the face above its plane, mm. */
export function surfaceHeightMm(surface: Surface, x: number, y: number): number {
  if (surface.bowMm === 0 && surface.twistMm === 0) return 0
  const dx = x - surface.centreMm[0]
  const dy = y - surface.centreMm[1]
  const s = (dx * surface.along[0] + dy * surface.along[1]) / surface.halfLengthMm
  const t = (dy * surface.along[0] - dx * surface.along[1]) / surface.halfWidthMm
  return surface.bowMm * (1 - s * s) + surface.twistMm * s * t
}

/**
 * Where a point of the slab shows in the photo.
 * @param heightAboveMm height above the slab's face, mm (a board's upper face: its thickness)
 * @returns pixel of the photo as it is, lens bow included; NaN for what lies behind the camera
 * Rules: PHO-3, PHO-4.
 */
export function pxFromPlanePoint(camera: Camera, [x, y]: Point, heightAboveMm = 0): PxPoint {
  const r = camera.rotation
  const depth = camera.heightMm - heightAboveMm - surfaceHeightMm(camera.surface, x, y)
  const zCam = r[6] * x + r[7] * y + r[8] * depth
  if (!(zCam > 0)) return pxPoint(Number.NaN, Number.NaN)
  const xn = (r[0] * x + r[1] * y + r[2] * depth) / zCam
  const yn = (r[3] * x + r[4] * y + r[5] * depth) / zCam
  return distortedPx(camera.lens, xn, yn)
}

function distortedPx(lens: Lens, xn: number, yn: number): PxPoint {
  const rr = xn * xn + yn * yn
  // Far outside the picture the polynomial folds back on itself; no ray of this lens goes there.
  const bowed = 1 + rr * (3 * lens.k1 + 5 * rr * lens.k2) > 0 ? 1 + rr * (lens.k1 + rr * lens.k2) : Number.NaN
  return pxPoint(lens.focalPx * xn * bowed + lens.centrePx[0], lens.focalPx * yn * bowed + lens.centrePx[1])
}

/** Pixel that the lens shows for an undistorted pixel (the pinhole's). */
export const distortPx = (lens: Lens, [u, v]: Point): PxPoint =>
  distortedPx(lens, (u - lens.centrePx[0]) / lens.focalPx, (v - lens.centrePx[1]) / lens.focalPx)

/**
 * Pixel that a pinhole would show for a pixel of the photo: the lens bow taken out.
 * @returns undistorted pixel; round trip with `distortPx` below 1e-9 px wherever the lens map is one to one
 * Method: Newton on r·(1 + k1·r² + k2·r⁴) = r_d. Rules: PHO-3.
 */
export function undistortPx(lens: Lens, [u, v]: Point): PxPoint {
  const xd = (u - lens.centrePx[0]) / lens.focalPx
  const yd = (v - lens.centrePx[1]) / lens.focalPx
  const rd = Math.hypot(xd, yd)
  if (rd === 0 || (lens.k1 === 0 && lens.k2 === 0)) return pxPoint(u, v)
  let r = rd
  for (let i = 0; i < 20; i++) {
    const rr = r * r
    const slope = 1 + rr * (3 * lens.k1 + 5 * rr * lens.k2)
    // Beyond the fold of a strong barrel lens there is no ray; keep to the last sensible radius.
    if (!(slope > 0.05)) break
    const step = (r * (1 + rr * (lens.k1 + rr * lens.k2)) - rd) / slope
    r -= step
    if (Math.abs(step) < 1e-16) break
  }
  const k = (r / rd) * lens.focalPx
  return pxPoint(xd * k + lens.centrePx[0], yd * k + lens.centrePx[1])
}

/**
 * The point of the slab's face that a pixel shows.
 * @param heightAboveMm where the seen thing stands above the face, mm
 * @returns mm in the plane frame; NaN above the horizon
 * Method: ray through the undistorted pixel, met with the face; for a face out of flat by fixed-point steps.
 * Rules: PHO-3, PHO-4.
 */
export function planePointFromPx(camera: Camera, px: Point, heightAboveMm = 0): Point {
  const [u, v] = undistortPx(camera.lens, px)
  const xn = (u - camera.lens.centrePx[0]) / camera.lens.focalPx
  const yn = (v - camera.lens.centrePx[1]) / camera.lens.focalPx
  const r = camera.rotation
  const dx = r[0] * xn + r[3] * yn + r[6]
  const dy = r[1] * xn + r[4] * yn + r[7]
  const dz = r[2] * xn + r[5] * yn + r[8]
  if (!(dz > 0)) return [Number.NaN, Number.NaN]
  let depth = camera.heightMm - heightAboveMm
  let x = (dx / dz) * depth
  let y = (dy / dz) * depth
  if (camera.surface.bowMm === 0 && camera.surface.twistMm === 0) return [x, y]
  for (let i = 0; i < 12; i++) {
    const nextDepth = camera.heightMm - heightAboveMm - surfaceHeightMm(camera.surface, x, y)
    const settled = Math.abs(nextDepth - depth) < 1e-9
    depth = nextDepth
    x = (dx / dz) * depth
    y = (dy / dz) * depth
    if (settled) break
  }
  return [x, y]
}

/** Plane frame (mm, the flat plane itself) to undistorted pixels. */
export function homographyOfCamera({ rotation: r, heightMm, lens }: Camera): Homography {
  const { focalPx: f, centrePx } = lens
  const row = (n: 0 | 3, centre: number): [number, number, number] => [
    f * r[n] + centre * r[6],
    f * r[n === 0 ? 1 : 4] + centre * r[7],
    (f * r[n === 0 ? 2 : 5] + centre * r[8]) * heightMm,
  ]
  return [...row(0, centrePx[0]), ...row(3, centrePx[1]), r[6], r[7], r[8] * heightMm]
}
