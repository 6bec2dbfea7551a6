import { describe, expect, it } from 'vitest'
import { convexHull } from './convexHull'
import { ringAreaMm2 } from './ringArea'

describe('convexHull (GEO-9)', () => {
  it('is the positive ring of the outermost corners', () => {
    const hull = convexHull([
      [5, 5],
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
      [5, 0],
      [5, 10],
      [0, 0],
    ])
    expect(hull).toEqual([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ])
    expect(ringAreaMm2(hull)).toBe(100)
  })

  it('gives two ends for points on one line, one point for one place, nothing for nothing', () => {
    expect(
      convexHull([
        [1, 1],
        [3, 3],
        [2, 2],
      ]),
    ).toEqual([
      [1, 1],
      [3, 3],
    ])
    expect(
      convexHull([
        [4, 2],
        [4, 2],
      ]),
    ).toEqual([[4, 2]])
    expect(convexHull([])).toEqual([])
  })
})
