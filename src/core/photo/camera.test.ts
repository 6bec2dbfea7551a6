import { describe, expect, it } from 'vitest'
import checks from '../../../tests/check-values/photo.json'
import { scene, seen } from '../../../tests/check-values/photo.scene'
import {
  type Camera,
  distortPx,
  homographyOfCamera,
  planePointFromPx,
  pxFromPlanePoint,
  undistortPx,
} from './camera'
import { applyHomography } from './homography'

describe('camera', () => {
  for (const check of checks.distortions) {
    it(`PHO-3 bows as the published radial terms do: ${check.id}`, () => {
      const lens = { focalPx: 1, centrePx: [0, 0] as const, k1: check.k1, k2: check.k2 }
      for (const { from, to } of check.points) {
        const got = distortPx(lens, [from[0] ?? 0, from[1] ?? 0])
        expect(Math.abs(got[0] - (to[0] ?? 0))).toBeLessThan(check.absTolerance)
        expect(Math.abs(got[1] - (to[1] ?? 0))).toBeLessThan(check.absTolerance)
      }
    })
  }

  it('PHO-3 bow and its removal return every pixel to 1e-9', () => {
    for (const [k1, k2] of [
      [-0.055, 0.012],
      [0.05, 0],
      [-0.12, 0.02],
      [0, 0],
    ] as const) {
      const lens = { focalPx: 2253, centrePx: [1503, 1121] as const, k1, k2 }
      for (const px of [
        [0, 0],
        [3000, 2250],
        [1503, 1121],
        [1502, 1121.5],
        [20, 1900],
      ] as const) {
        const back = distortPx(lens, undistortPx(lens, px))
        expect(Math.hypot(back[0] - px[0], back[1] - px[1])).toBeLessThan(1e-9)
      }
    }
  })

  it('PHO-4 a place on the face seen and read back is the same place, bowed and twisted slabs included', () => {
    const { camera } = scene({ k1: -0.04 })
    const bent: Camera = {
      ...camera,
      surface: { ...camera.surface, centreMm: [0, -1200], bowMm: 14, twistMm: -9 },
    }
    for (const at of [camera, bent]) {
      for (const point of [
        [-900, -900],
        [800, -1500],
        [0, -1200],
      ] as const) {
        const back = planePointFromPx(at, pxFromPlanePoint(at, point, 6), 6)
        expect(Math.hypot(back[0] - point[0], back[1] - point[1])).toBeLessThan(1e-6)
      }
    }
  })

  it('PHO-4 without lens bow the camera is its homography', () => {
    const at = scene()
    const h = homographyOfCamera(at.camera)
    const px = pxFromPlanePoint(at.camera, [300, -1000])
    const mapped = applyHomography(h, [300, -1000])
    expect(Math.hypot(px[0] - mapped[0], px[1] - mapped[1])).toBeLessThan(1e-9)
    expect(seen(at, [0, 0])[0]).toBeCloseTo(1500, 6)
  })
})
