import { describe, expect, it } from 'vitest'
import { ringBounds } from './bounds'
import { isPointInRegion, isPointInRing } from './isPointInRing'
import type { Point } from './point'
import { regionAreaMm2, regionsAreaMm2 } from './regionArea'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'
import { ringCentroid, ringMoments } from './ringMoments'
import { ringPerimeterMm } from './ringPerimeter'

const triangle: Point[] = [
  [0, 0],
  [300, 0],
  [0, 400],
]
const far = (ring: readonly Point[]): Point[] => ring.map(([x, y]) => [x + 2 ** 40, y - 2 ** 39])

describe('ring measures', () => {
  it('a right triangle has half the area of its box, and reversing flips the sign only (GEO-1)', () => {
    expect(ringAreaMm2(triangle)).toBe(60_000)
    expect(ringAreaMm2(reverseRing(triangle))).toBe(-60_000)
  })

  it('perimeter closes the ring', () => {
    expect(ringPerimeterMm(triangle)).toBe(1200)
    expect(ringPerimeterMm([])).toBe(0)
  })

  it('area and moments are the same far from the origin (GEO-2)', () => {
    expect(ringAreaMm2(far(triangle))).toBe(60_000)
    const { centroid, ...moments } = ringMoments(triangle)
    const { centroid: farCentroid, ...farMoments } = ringMoments(far(triangle))
    expect(farCentroid[0] - 2 ** 40).toBeCloseTo(centroid[0], 3)
    expect(farMoments.aboutXMm4 / moments.aboutXMm4).toBeCloseTo(1, 6)
    expect(farMoments.areaMm2).toBe(moments.areaMm2)
  })

  it('the centroid of a triangle is the mean of its corners', () => {
    const [x, y] = ringCentroid(triangle)
    expect(x).toBeCloseTo(100, 12)
    expect(y).toBeCloseTo(400 / 3, 12)
  })

  it('a ring without area has no centroid', () => {
    expect(() => ringCentroid([])).toThrow(/without area/)
    expect(() =>
      ringCentroid([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(/without area/)
  })

  it('bounds hold all points, and nothing has none', () => {
    expect(ringBounds(triangle)).toEqual({ minX: 0, minY: 0, maxX: 300, maxY: 400 })
    expect(() => ringBounds([])).toThrow(/empty/)
  })

  it('a region is its outer ring less its holes (GEO-3)', () => {
    const region = {
      outer: triangle,
      holes: [
        reverseRing<Point>([
          [10, 10],
          [20, 10],
          [20, 20],
          [10, 20],
        ]),
      ],
    }
    expect(regionAreaMm2(region)).toBe(59_900)
    expect(regionsAreaMm2([region, region])).toBe(119_800)
    expect(isPointInRegion([15, 15], region)).toBe(false)
    expect(isPointInRegion([10, 15], region)).toBe(true)
    expect(isPointInRegion([5, 5], region)).toBe(true)
  })

  it('the boundary counts as inside, exactly (GEO-9)', () => {
    expect(isPointInRing([150, 200], triangle)).toBe(true)
    expect(isPointInRing([150, 200 + 2 ** -44], triangle)).toBe(false)
    expect(isPointInRing([300, 0], triangle)).toBe(true)
    expect(isPointInRing([-1, 0], triangle)).toBe(false)
    expect(isPointInRing([301, 0], triangle)).toBe(false)
  })
})
