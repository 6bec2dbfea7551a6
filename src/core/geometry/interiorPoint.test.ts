import { describe, expect, it } from 'vitest'
import { interiorPoint } from './interiorPoint'
import { isPointInRegion } from './isPointInRing'
import type { Point } from './point'
import { pointToRingDistanceMm } from './pointDistances'
import type { Region } from './region'
import { reverseRing } from './reverseRing'

const clearance = (region: Region): number => {
  const at = interiorPoint(region)
  const mm = Math.min(...[region.outer, ...region.holes].map((ring) => pointToRingDistanceMm(at, ring)))
  return isPointInRegion(at, region) ? mm : -mm
}
const solid = (outer: Point[]): Region => ({ outer, holes: [] })
const box = (x: number, y: number, w: number, h: number): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

describe('interiorPoint', () => {
  it('is the middle of a square, within 2 % of the greatest clearance', () => {
    expect(clearance(solid(box(0, 0, 100, 100)))).toBeGreaterThan(50 / 1.02)
  })

  it('avoids a hole in the middle', () => {
    const frame = { outer: box(0, 0, 100, 100), holes: [reverseRing(box(20, 20, 60, 60))] }
    // The corner squares of the frame: a circle between two outer sides and the hole's corner.
    const best = (20 * Math.SQRT2) / (1 + Math.SQRT2)
    expect(clearance(frame)).toBeGreaterThan(best / 1.02)
    expect(clearance(frame)).toBeLessThanOrEqual(best)
  })

  it('finds the inside of long thin strips at any angle', () => {
    for (const angle of [0, 0.1, 0.785, 1.5]) {
      const strip = box(0, 0, 3000, 2).map(([x, y]): Point => [
        x * Math.cos(angle) - y * Math.sin(angle),
        x * Math.sin(angle) + y * Math.cos(angle),
      ])
      expect(clearance(solid(strip))).toBeGreaterThan(0.9)
    }
  })

  it('finds the inside of a thin bent piece whose centroid lies outside', () => {
    const arc = (r: number): Point[] =>
      Array.from({ length: 90 }, (_, i) => [r * Math.cos(i / 20), r * Math.sin(i / 20)])
    expect(clearance(solid([...arc(500), ...arc(497).reverse()]))).toBeGreaterThan(1.2)
  })

  it('finds the inside of a comb and of a needle', () => {
    const teeth = Array.from({ length: 20 }, (_, i): Point[] => [
      [100 - i * 5, 50],
      [98 - i * 5, 1],
    ]).flat()
    expect(clearance(solid([[-1, 0], [101, 0], ...teeth]))).toBeGreaterThan(0)
    expect(
      clearance(
        solid([
          [0, 0],
          [1000, 0.01],
          [1000, 0.02],
        ]),
      ),
    ).toBeGreaterThan(0)
  })

  it('works far from the origin and at any scale', () => {
    expect(clearance(solid(box(1e6, -1e6, 1, 1)))).toBeGreaterThan(0.49)
    expect(clearance(solid(box(0, 0, 1e-3, 1e-3)))).toBeGreaterThan(0.00049)
  })

  it('refuses a region without inside', () => {
    expect(() =>
      interiorPoint(
        solid([
          [0, 0],
          [5, 5],
          [10, 10],
        ]),
      ),
    ).toThrow(/without inside/)
  })
})
