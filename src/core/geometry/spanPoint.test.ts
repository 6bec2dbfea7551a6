import { describe, expect, it } from 'vitest'
import { randomSlab } from '../../../tests/support/randomSlab'
import { isPointInRegion } from './isPointInRing'
import type { Point } from './point'
import type { Region } from './region'
import { spanPoint } from './spanPoint'

const region = (outer: readonly Point[], holes: readonly (readonly Point[])[] = []): Region => ({
  outer,
  holes,
})

describe('spanPoint', () => {
  it('is the middle of a rectangle', () => {
    const rectangle = region([
      [0, 0],
      [40, 0],
      [40, 20],
      [0, 20],
    ])
    expect(spanPoint(rectangle)).toEqual([20, 10])
  })

  it('lies beside a hole over the centroid, and in an arm of an L', () => {
    const outer: Point[] = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]
    const framed = region(outer, [
      [
        [20, 20],
        [20, 80],
        [70, 80],
        [70, 20],
      ],
    ])
    expect(spanPoint(framed)).toEqual([85, 50])
    const l = region([
      [0, 0],
      [60, 0],
      [60, 20],
      [20, 20],
      [20, 60],
      [0, 60],
    ])
    expect(isPointInRegion(spanPoint(l), l)).toBe(true)
  })

  it('lies inside a hundred random slabs with voids', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const { outer, holes } = randomSlab(seed)
      const slab = { outer, holes }
      expect(isPointInRegion(spanPoint(slab), slab)).toBe(true)
    }
  })
})
