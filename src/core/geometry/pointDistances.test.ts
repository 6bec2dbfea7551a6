import { describe, expect, it } from 'vitest'
import type { Point } from './point'
import { pointToRingDistanceMm, pointToSegmentDistanceMm } from './pointDistances'

describe('point distances', () => {
  it('measures square to the segment beside it, to its end beyond it', () => {
    expect(pointToSegmentDistanceMm([5, 3], [0, 0], [10, 0])).toBe(3)
    expect(pointToSegmentDistanceMm([13, 4], [0, 0], [10, 0])).toBe(5)
    expect(pointToSegmentDistanceMm([-3, 4], [0, 0], [10, 0])).toBe(5)
    expect(pointToSegmentDistanceMm([3, 4], [0, 0], [0, 0])).toBe(5)
  })

  it('measures to the boundary of a ring from inside and outside, closing edge included', () => {
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]
    expect(pointToRingDistanceMm([2, 5], square)).toBe(2)
    expect(pointToRingDistanceMm([-2, 5], square)).toBe(2)
    expect(pointToRingDistanceMm([13, 14], square)).toBe(5)
    expect(() => pointToRingDistanceMm([0, 0], [])).toThrow(/empty ring/)
  })
})
