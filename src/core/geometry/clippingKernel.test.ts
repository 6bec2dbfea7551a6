import { describe, expect, it } from 'vitest'
import { arcToleranceMm, clipRings, offsetRings } from './clippingKernel'
import type { Point } from './point'
import { regionsAreaMm2 } from './regionArea'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'

const box = (x: number, y: number, w: number, h: number): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]
const circle = (count: number, radiusMm: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)]
  })

describe('clippingKernel', () => {
  it('returns slivers: dropping them is the caller’s explicit step (GEO-6)', () => {
    expect(regionsAreaMm2(clipRings('subtract', [box(0, 0, 10, 10)], [box(0.05, -1, 20, 20)]))).toBeCloseTo(
      0.5,
      9,
    )
  })

  it('a stray negative ring encloses nothing, and a bow-tie keeps its positive lobe only', () => {
    expect(clipRings('unite', [reverseRing(box(0, 0, 10, 10))], [])).toEqual([])
    const bowTie: Point[] = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]
    expect(regionsAreaMm2(clipRings('unite', [bowTie], []))).toBe(25)
  })

  it('gives the same shape wherever it lies, up to 18 m across', () => {
    const offsets = [0, 5000, 90_000, -99_000]
    const areas = offsets.map((d) =>
      regionsAreaMm2(
        clipRings('intersect', [box(d, d, 18_000, 900)], [box(d + 100.05, d - 7, 17_000, 500.25)]),
      ),
    )
    for (const area of areas) expect(area).toBeCloseTo(17_000 * 493.25, 5)
  })

  it('simplifies a ring above 5000 vertices by 0.1 mm, the same way in every operation', () => {
    const many = circle(12_000, 1000)
    const half = box(0, -2000, 3000, 4000)
    const whole = clipRings('unite', [many], [])
    expect(whole[0]?.outer.length).toBeLessThan(400)
    expect(Math.abs(regionsAreaMm2(whole) - ringAreaMm2(many))).toBeLessThan(0.1 * 2 * Math.PI * 1000)
    const parts =
      regionsAreaMm2(clipRings('intersect', [many], [half])) +
      regionsAreaMm2(clipRings('subtract', [many], [half]))
    expect(parts).toBeCloseTo(regionsAreaMm2(whole), 0)
    expect(clipRings('unite', [circle(5000, 1000)], [])[0]?.outer).toHaveLength(5000)
  })

  it('round corners keep within the arc tolerance, never outside it (GEO-7)', () => {
    expect([-1, 5, 500].map(arcToleranceMm)).toEqual([0.002, 0.01, 0.02])
    for (const radiusMm of [1, 30, 500]) {
      const [grown] = offsetRings([box(0, 0, 10, 10)], radiusMm, 'round')
      const outer = grown?.outer ?? []
      const corner = outer.filter(([x, y]) => x < -1e-3 && y < -1e-3)
      expect(corner.length).toBeGreaterThan(4)
      for (const [x, y] of corner) expect(Math.abs(Math.hypot(x, y) - radiusMm)).toBeLessThan(2e-4)
      corner.slice(1).forEach(([x, y], i) => {
        const [x0, y0] = corner[i] ?? [x, y]
        expect(radiusMm - Math.hypot((x + x0) / 2, (y + y0) / 2)).toBeLessThan(
          arcToleranceMm(radiusMm) + 2e-4,
        )
      })
    }
  })
})
