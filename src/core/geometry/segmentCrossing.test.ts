import { describe, expect, it } from 'vitest'
import { isPointOnSegment, segmentCrossing } from './segmentCrossing'

describe('segmentCrossing (GEO-9)', () => {
  it('gives the crossing point of two segments', () => {
    expect(segmentCrossing([0, 0], [10, 10], [0, 10], [10, 0])).toEqual([5, 5])
    expect(segmentCrossing([0, 0], [4, 0], [1, -1], [1, 3])).toEqual([1, 0])
  })

  it('gives nothing when they miss, also when only the lines cross', () => {
    expect(segmentCrossing([0, 0], [10, 10], [20, 0], [11, 9])).toBeNull()
    expect(segmentCrossing([0, 0], [10, 0], [0, 1], [10, 1])).toBeNull()
    expect(segmentCrossing([0, 0], [10, 10], [6, 5], [10, 0])).toBeNull()
    expect(segmentCrossing([0, 0], [1, 0], [2, 0], [3, 0])).toBeNull()
    expect(segmentCrossing([0, 0], [4, 4], [1, 1.5], [3, 3.5])).toBeNull()
  })

  it('touching counts, and gives the touching end unrounded', () => {
    const third = 1 / 3
    expect(segmentCrossing([0, third], [0, 10], [-5, third], [5, third])).toEqual([0, third])
    expect(segmentCrossing([0, 0], [1, third], [1, third], [7, 2])).toEqual([1, third])
    expect(segmentCrossing([0, 0], [10, 0], [third, 0], [third, 9])).toEqual([third, 0])
  })

  it('of segments that run along each other gives the shared point nearest to the first end', () => {
    expect(segmentCrossing([0, 0], [10, 0], [8, 0], [4, 0])).toEqual([4, 0])
    expect(segmentCrossing([5, 0], [10, 0], [0, 0], [7, 0])).toEqual([5, 0])
    expect(segmentCrossing([10, 0], [0, 0], [8, 0], [4, 0])).toEqual([8, 0])
  })

  it('takes a segment without length as a point', () => {
    expect(segmentCrossing([3, 0], [3, 0], [0, 0], [10, 0])).toEqual([3, 0])
    expect(segmentCrossing([3, 1], [3, 1], [0, 0], [10, 0])).toBeNull()
    expect(segmentCrossing([3, 1], [3, 1], [3, 1], [3, 1])).toEqual([3, 1])
  })

  it('knows exactly whether a point lies on a segment', () => {
    expect(isPointOnSegment([3, 1], [0, 0], [6, 2])).toBe(true)
    expect(isPointOnSegment([3, 1 + 2 ** -52], [0, 0], [6, 2])).toBe(false)
    expect(isPointOnSegment([9, 3], [0, 0], [6, 2])).toBe(false)
  })
})
