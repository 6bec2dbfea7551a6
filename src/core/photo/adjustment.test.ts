import { createRequire } from 'node:module'
import { beforeAll, describe, expect, it } from 'vitest'
import { FOUR_MARKS, middleOf, scene, seen } from '../../../tests/check-values/photo.scene'
import type { Point } from '../geometry'
import { adjust, type AdjustmentInput, cameraWith, thetaOf } from './adjustment'
import { planePointFromPx, pxFromPlanePoint } from './camera'

interface CvMat {
  readonly data64F: Float64Array
  delete(): void
}
interface VisionLibrary {
  readonly CV_64F: number
  readonly CV_64FC2: number
  readonly CV_64FC3: number
  readonly Mat: new () => CvMat
  matFromArray(rows: number, cols: number, type: number, values: readonly number[]): CvMat
  projectPoints(points: CvMat, turn: CvMat, shift: CvMat, k: CvMat, bow: CvMat, out: CvMat): void
  solvePnP(points: CvMat, px: CvMat, k: CvMat, bow: CvMat, turn: CvMat, shift: CvMat): boolean
  Rodrigues(from: CvMat, to: CvMat): void
}

const free = { mean: 0, sd: Number.POSITIVE_INFINITY }
const held = (mean: number): { mean: number; sd: number } => ({ mean, sd: 1e-6 })

/** Marks in the plane frame, seen by a bowed lens, and a start that is off. */
function exactInput(at: ReturnType<typeof scene>): { input: AdjustmentInput; marks: readonly Point[] } {
  const [mx, my] = middleOf(at)
  const marks = FOUR_MARKS.map(([x, y]): Point => [x + mx, y + my])
  const { focalPx, centrePx, k1, k2 } = at.camera.lens
  const start = thetaOf(at.camera)
  return {
    marks,
    input: {
      camera: cameraWith(at.camera, [0.03, -0.02, (start[2] ?? 0) + 0.04, ...start.slice(3)]),
      marks: marks.map(([x, y]) => ({ start: [x + 9, y - 7], heightMm: 0 })),
      sightings: FOUR_MARKS.map((p, mark) => ({ mark, px: seen(at, p), sdPx: 0.3 })),
      lengths: marks.flatMap((p, a) =>
        marks.slice(a + 1).map((q, n) => ({
          a,
          b: a + n + 1,
          lengthMm: Math.hypot(p[0] - q[0], p[1] - q[1]),
          sdMm: 0.5,
        })),
      ),
      lines: [],
      priors: [
        free,
        free,
        free,
        held(Math.log(focalPx)),
        held(centrePx[0]),
        held(centrePx[1]),
        held(k1),
        held(k2),
        held(0),
        held(0),
      ],
    },
  }
}

describe('adjust', () => {
  let cv: VisionLibrary
  beforeAll(async () => {
    cv = await (createRequire(import.meta.url)('@techstark/opencv-js') as Promise<VisionLibrary>)
  }, 60_000)

  it('PHO-3 the camera shows points where the vision library projects them', () => {
    const { camera } = scene({ tilt: 0.7, turn: 0.4, k1: -0.05 })
    const { focalPx, centrePx, k1, k2 } = camera.lens
    const points: readonly Point[] = [
      [-900, -900],
      [800, -1500],
      [0, -1200],
    ]
    const r = camera.rotation
    const mats = {
      points: cv.matFromArray(
        3,
        1,
        cv.CV_64FC3,
        points.flatMap(([x, y]) => [x, y, 0]),
      ),
      rotation: cv.matFromArray(3, 3, cv.CV_64F, [...r]),
      turn: new cv.Mat(),
      shift: cv.matFromArray(
        3,
        1,
        cv.CV_64F,
        [2, 5, 8].map((i) => (r[i] ?? 0) * camera.heightMm),
      ),
      k: cv.matFromArray(3, 3, cv.CV_64F, [focalPx, 0, centrePx[0], 0, focalPx, centrePx[1], 0, 0, 1]),
      bow: cv.matFromArray(4, 1, cv.CV_64F, [k1, k2, 0, 0]),
      out: new cv.Mat(),
    }
    cv.Rodrigues(mats.rotation, mats.turn)
    cv.projectPoints(mats.points, mats.turn, mats.shift, mats.k, mats.bow, mats.out)
    points.forEach((p, i) => {
      const [u, v] = pxFromPlanePoint(camera, p)
      expect(Math.abs(u - (mats.out.data64F[2 * i] ?? 0))).toBeLessThan(1e-6)
      expect(Math.abs(v - (mats.out.data64F[2 * i + 1] ?? 0))).toBeLessThan(1e-6)
    })
    for (const mat of Object.values(mats)) mat.delete()
  })

  it('PHO-7 agrees with the vision library’s pose on exact data to 1e-6', () => {
    const at = scene({ tilt: 0.8, turn: -0.3, k1: -0.03 })
    const { input, marks } = exactInput(at)
    const { focalPx, centrePx, k1, k2 } = at.camera.lens
    const mats = {
      points: cv.matFromArray(
        4,
        1,
        cv.CV_64FC3,
        marks.flatMap(([x, y]) => [x, y, 0]),
      ),
      px: cv.matFromArray(
        4,
        1,
        cv.CV_64FC2,
        input.sightings.flatMap((s) => [...s.px]),
      ),
      k: cv.matFromArray(3, 3, cv.CV_64F, [focalPx, 0, centrePx[0], 0, focalPx, centrePx[1], 0, 0, 1]),
      bow: cv.matFromArray(4, 1, cv.CV_64F, [k1, k2, 0, 0]),
      turn: new cv.Mat(),
      shift: new cv.Mat(),
      rotation: new cv.Mat(),
    }
    expect(cv.solvePnP(mats.points, mats.px, mats.k, mats.bow, mats.turn, mats.shift)).toBe(true)
    cv.Rodrigues(mats.turn, mats.rotation)
    const ours = adjust(input).camera
    // Height over the plane: third column of the rotation against the shift.
    const theirs = mats.rotation.data64F
    const shift = mats.shift.data64F
    const heightMm = [2, 5, 8].reduce((sum, i, row) => sum + (theirs[i] ?? 0) * (shift[row] ?? 0), 0)
    expect(Math.abs(ours.heightMm / heightMm - 1)).toBeLessThan(1e-6)
    expect(Math.abs(ours.rotation[8] - (theirs[8] ?? 0))).toBeLessThan(1e-6)
    // The plane frame may be turned about its own normal: compare a length instead of places.
    const [p, q] = [planePointFromPx(ours, [400, 900]), planePointFromPx(ours, [2500, 1900])]
    const [a, b] = [planePointFromPx(at.camera, [400, 900]), planePointFromPx(at.camera, [2500, 1900])]
    expect(Math.hypot(p[0] - q[0], p[1] - q[1]) / Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(1, 6)
    for (const mat of Object.values(mats)) mat.delete()
  })

  it('PHO-8 a straight line off the middle tells the bow of the lens, and one across the middle does not', () => {
    const at = scene({ tilt: 0.6, k1: -0.045 })
    const { input } = exactInput(at)
    const line = (offset: number): AdjustmentInput['lines'][number] => ({
      points: Array.from({ length: 9 }, (_, i) => seen(at, [-1000 + 250 * i, offset])),
      sdPx: 0.3,
      heightMm: 0,
    })
    const sdOfK1 = (offset: number): { k1: number; sd: number } => {
      const priors = input.priors.map((p, i) => (i === 6 ? { mean: 0, sd: 0.03 } : p))
      const { camera, covariance } = adjust({ ...input, lines: [line(offset)], priors })
      return { k1: camera.lens.k1, sd: Math.sqrt(covariance?.[66] ?? 0) }
    }
    expect(sdOfK1(320).sd).toBeLessThan(0.006)
    expect(Math.abs(sdOfK1(320).k1 + 0.045)).toBeLessThan(0.006)
    expect(sdOfK1(0).sd).toBeGreaterThan(3 * sdOfK1(320).sd)
  })

  it('PHO-8 a line counts in pixels, so that it cannot pull the tilt: with marks left out nothing but the lens moves', () => {
    const at = scene({ tilt: 0.9, k1: -0.04 })
    const [mx, my] = middleOf(at)
    const usual = { mean: 0, sd: 0.35 }
    const { focalPx, centrePx } = at.camera.lens
    const input: AdjustmentInput = {
      // Assumed 0.4 rad flatter than it is; one known length only.
      camera: cameraWith(at.camera, [0.4, 0, Math.log(1500), ...thetaOf(at.camera).slice(3)]),
      marks: [
        { start: [mx - 300, my], heightMm: 0 },
        { start: [mx + 300, my], heightMm: 0 },
      ],
      sightings: [
        { mark: 0, px: seen(at, [-300, 0]), sdPx: 0.3 },
        { mark: 1, px: seen(at, [300, 0]), sdPx: 0.3 },
      ],
      lengths: [{ a: 0, b: 1, lengthMm: 600, sdMm: 0.5 }],
      lines: [
        {
          points: Array.from({ length: 41 }, (_, i) => {
            const [u, v] = seen(at, [-1000 + 50 * i, 300])
            // Uneven by half a pixel: what another view would seem to mend if it were counted in mm.
            return [u, v + (i % 2 === 0 ? 0.5 : -0.5)] as const
          }),
          sdPx: 0.3,
          heightMm: 0,
        },
      ],
      priors: [
        usual,
        usual,
        free,
        held(Math.log(focalPx)),
        held(centrePx[0]),
        held(centrePx[1]),
        { mean: 0, sd: 0.03 },
        held(0),
        held(0),
        held(0),
      ],
    }
    const { camera } = adjust(input)
    const turned =
      Math.acos(Math.min(1, camera.rotation[8])) - Math.acos(Math.min(1, input.camera.rotation[8]))
    expect(Math.abs(turned)).toBeLessThan(0.05)
  })
})
