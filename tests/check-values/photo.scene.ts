import type { Camera, ScaleInput } from '../../src/core/photo'
import { pxFromPlanePoint } from '../../src/core/photo'
import { type Point, type PxPoint, pxPoint } from '../../src/core/geometry'

/** A made-up photo of a slab for tests: a camera and marks, seen exactly. */
export interface Scene {
  readonly camera: Camera
  readonly widthPx: number
  readonly heightPx: number
}

/** 26 mm equivalent on 3000 × 2250, as focal length over half the diagonal says. */
const FOCAL_PX = (26 / Math.hypot(36, 24)) * Math.hypot(3000, 2250)

/**
 * @param tilt  radians off straight-from-above, leaning back so that the far edge is at the top
 * @param turn  radians by which the slab lies turned in the picture
 */
export function scene(
  options: {
    tilt?: number
    turn?: number
    heightMm?: number
    k1?: number
    centrePx?: Point
    focalPx?: number
  } = {},
): Scene {
  const {
    tilt = 0.7,
    turn = 0.2,
    heightMm = 1500,
    k1 = 0,
    centrePx = [1500, 1125],
    focalPx = FOCAL_PX,
  } = options
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)]
  const [ct, st] = [Math.cos(turn), Math.sin(turn)]
  // Rows: right, down, forward. Leaning back by `tilt` turns forward from +z towards -y (up in the picture).
  const rotation = [ct, -st, 0, c * st, c * ct, s, -s * st, -s * ct, c] as const
  return {
    camera: {
      rotation,
      heightMm,
      lens: { focalPx, centrePx, k1, k2: 0 },
      surface: {
        centreMm: [0, 0],
        along: [1, 0],
        halfLengthMm: 1200,
        halfWidthMm: 500,
        bowMm: 0,
        twistMm: 0,
      },
    },
    widthPx: 3000,
    heightPx: 2250,
  }
}

/** Where the middle of the picture meets the slab, plane frame. */
export function middleOf({ camera }: Scene): Point {
  const r = camera.rotation
  const k = camera.heightMm / r[8]
  return [r[6] * k, r[7] * k]
}

/** Points given about the picture's middle, as pixels of the photo. */
export function seen(at: Scene, point: Point, heightMm = 0): PxPoint {
  const [x, y] = middleOf(at)
  const px = pxFromPlanePoint(at.camera, [point[0] + x, point[1] + y], heightMm)
  return pxPoint(px[0], px[1])
}

export const FOUR_MARKS: readonly Point[] = [
  [-880, 260],
  [860, 320],
  [900, -300],
  [-850, -330],
]

/** Marks m1, m2 … with every distance between them (d12, d13 …), seen exactly. */
export function markInput(at: Scene, marks: readonly Point[] = FOUR_MARKS, heightMm = 0): ScaleInput {
  const distances = marks.flatMap((p, i) =>
    marks.slice(i + 1).map((q, n) => ({
      id: `d${String(i + 1)}${String(i + n + 2)}`,
      markIds: [`m${String(i + 1)}`, `m${String(i + n + 2)}`] as const,
      lengthMm: Math.hypot(p[0] - q[0], p[1] - q[1]),
    })),
  )
  return {
    marks: marks.map((_, i) => ({ id: `m${String(i + 1)}`, heightMm })),
    tapedDistances: distances,
    boards: [],
    observations: marks.map((p, i) => ({ markId: `m${String(i + 1)}`, atPx: seen(at, p, heightMm) })),
    imageWidthPx: at.widthPx,
    imageHeightPx: at.heightPx,
    focalLength35mm: 26,
    clickSdPx: 0.3,
    flatness: { kind: 'read', bowMm: 0, twistMm: 0, readingSdMm: 0.1 },
  }
}
