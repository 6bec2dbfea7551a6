import { describe, expect, it } from 'vitest'
import { FOUR_MARKS, markInput, middleOf, scene, seen } from '../../../tests/check-values/photo.scene'
import { noise } from '../../../tests/bench/scale/benchNoise'
import { type Point, pxPoint } from '../geometry'
import { planePointFromPx, pxFromPlanePoint as pxFromPlane } from './camera'
import type { ScaleInput } from './scaleInput'
import { slabScaleFromMarks } from './slabScale'
import type { SlabScale } from './scaleOfPhoto'
import { measuredAreaMm2, measuredLengthMm, thetaGradient, thetaVariance } from './uncertainty'

describe('uncertainty', () => {
  it('PHO-15 straight from above the deviation of a length is √2·σ over the scale', () => {
    const at = scene({ tilt: 0, heightMm: 1500 })
    const scale = {
      camera: at.camera,
      covariance: Array.from({ length: 100 }, () => 0),
    } as unknown as SlabScale
    const pxPerMm = at.camera.lens.focalPx / 1500
    const { sd } = measuredLengthMm(scale, seen(at, [-400, 0]), seen(at, [500, 100]), 0.7)
    // Affine limit (textbook): two clicks, each 0.7 px along the line.
    expect(sd).toBeCloseTo((Math.SQRT2 * 0.7) / pxPerMm, 4)
  })

  it('PHO-15 the covariance agrees with Monte Carlo of the whole chain within 10 %: lengths and an area', () => {
    const draw = noise(20_260_112)
    const { normal } = draw
    const spans: readonly (readonly [Point, Point])[] = [
      [
        [-1100, 400],
        [1080, -420],
      ],
      [
        [-1000, -450],
        [-900, 430],
      ],
      [
        [-200, -450],
        [1100, 380],
      ],
    ]
    const ring: readonly Point[] = [
      [-1100, 420],
      [1050, 430],
      [1080, -430],
      [-1050, -460],
    ]
    const sums = [...spans.map(() => ({ stated: 0, true: 0 })), { stated: 0, true: 0 }]
    const trials = 300
    for (let n = 0; n < trials; n++) {
      // A camera, lens and face drawn from what is believed beforehand (scalePriors).
      const base = scene({ tilt: 0.7, k1: normal(0.03), focalPx: 2253.47 * Math.exp(normal(0.04)) })
      const middle = middleOf(base)
      const at = {
        ...base,
        camera: {
          ...base.camera,
          lens: {
            ...base.camera.lens,
            k2: normal(0.01),
            centrePx: [1500 + normal(15), 1125 + normal(15)] as const,
          },
          surface: { ...base.camera.surface, centreMm: middle, bowMm: normal(1), twistMm: normal(1) },
        },
      }
      const place = (p: Point): Point => [p[0] + middle[0], p[1] + middle[1]]
      const look = (p: Point): ReturnType<typeof pxPoint> => {
        const [u, v] = seenThrough(at.camera, place(p))
        return pxPoint(u + normal(0.3), v + normal(0.3))
      }
      const exact = markInput(base)
      const input: ScaleInput = {
        ...exact,
        observations: FOUR_MARKS.map((p, i) => ({ markId: `m${i + 1}`, atPx: look(p) })),
        tapedDistances: exact.tapedDistances.map((d) => ({ ...d, lengthMm: d.lengthMm + normal(0.5) })),
        flatness: { kind: 'read', bowMm: 0, twistMm: 0, readingSdMm: 1 },
        slabSpanPx: (
          [
            [-1200, 500],
            [1200, 500],
            [1200, -500],
            [-1200, -500],
          ] as const
        ).map(look),
        slabAxisPx: [look([-1200, 0]), look([1200, 0])],
      }
      const { scale } = slabScaleFromMarks(input)
      if (!scale) throw new Error('no scale')
      spans.forEach(([p, q], i) => {
        const sum = sums[i]
        const { value, sd } = measuredLengthMm(scale, look(p), look(q), 0.3)
        if (sum) sum.stated += sd * sd
        if (sum) sum.true += (value - Math.hypot(p[0] - q[0], p[1] - q[1])) ** 2
      })
      const area = measuredAreaMm2(
        scale,
        ring.map((p) => pxPoint(...seenThrough(at.camera, place(p)))),
        0,
        1,
      )
      const sum = sums.at(-1)
      if (sum) sum.stated += area.sd ** 2
      if (sum) sum.true += (area.value - Math.abs(shoelace(ring))) ** 2
    }
    for (const { stated, true: truth } of sums) {
      const ratio = Math.sqrt(stated / truth)
      expect(ratio).toBeGreaterThan(0.9)
      expect(ratio).toBeLessThan(1.1)
    }
  })

  it('PHO-15 a gradient serves any figure: that of an area is what measuredAreaMm2 uses', () => {
    const at = scene()
    const { scale } = slabScaleFromMarks(markInput(at))
    if (!scale) throw new Error('no scale')
    const ring = (
      [
        [-500, 300],
        [500, 300],
        [500, -300],
      ] as const
    ).map((p) => seen(at, p))
    const gradient = thetaGradient(scale.camera, (camera) =>
      Math.abs(shoelace(ring.map((p) => planePointFromPx(camera, p)))),
    )
    expect(Math.sqrt(thetaVariance(scale, gradient))).toBeCloseTo(measuredAreaMm2(scale, ring, 0, 1).sd, 3)
  })

  it('PHO-15 an edge that hangs together over a longer stretch makes an area less sure', () => {
    const at = scene({ tilt: 0 })
    const scale = {
      camera: at.camera,
      covariance: Array.from({ length: 100 }, () => 0),
    } as unknown as SlabScale
    const side = Array.from({ length: 20 }, (_, i) => i * 50 - 500)
    const ring = [...side.map((x): Point => [x, -300]), ...side.map((x): Point => [-x, 300])].map((p) =>
      seen(at, p),
    )
    const mmPerPx = 1500 / at.camera.lens.focalPx
    const sides = ring.map((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p
      return Math.hypot(q[0] - p[0], q[1] - p[1]) * mmPerPx
    })
    // By hand: stretches that move one pixel either way, each by itself: σ² = Σ length · max(length, correlation) · σ².
    const expected = (correlationMm: number): number =>
      mmPerPx * Math.sqrt(sides.reduce((sum, l) => sum + l * Math.max(l, correlationMm), 0))
    expect(measuredAreaMm2(scale, ring, 1, 1).sd / expected(1)).toBeCloseTo(1, 6)
    expect(measuredAreaMm2(scale, ring, 1, 400).sd / expected(400)).toBeCloseTo(1, 6)
    expect(expected(400)).toBeGreaterThan(expected(1))
  })
})

function seenThrough(camera: SlabScale['camera'], p: Point): readonly [number, number] {
  const px = pxFromPlane(camera, p)
  return [px[0], px[1]]
}

function shoelace(ring: readonly Point[]): number {
  return (
    ring.reduce((sum, p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p
      return sum + p[0] * q[1] - p[1] * q[0]
    }, 0) / 2
  )
}
