import { describe, expect, it } from 'vitest'
import type { Point } from './point'
import { smallestRectangle } from './smallestRectangle'

const turned = ([x, y]: Point, angle: number): Point => [
  100 + x * Math.cos(angle) - y * Math.sin(angle),
  200 + x * Math.sin(angle) + y * Math.cos(angle),
]

describe('smallestRectangle', () => {
  it.each([0, 0.3, 1.2, -1.5, Math.PI / 2, 2.9])('finds a rectangle turned by %d as itself', (angle) => {
    const corners: Point[] = [
      [-50, -20],
      [50, -20],
      [50, 20],
      [-50, 20],
    ]
    const found = smallestRectangle([...corners, [10, 5] as Point].map((p) => turned(p, angle)))
    expect(found.lengthMm).toBeCloseTo(100, 9)
    expect(found.widthMm).toBeCloseTo(40, 9)
    expect(found.centre[0]).toBeCloseTo(100, 9)
    expect(found.centre[1]).toBeCloseTo(200, 9)
    expect(Math.sin(found.angleRad - angle)).toBeCloseTo(0, 9)
    expect(found.angleRad).toBeGreaterThan(-Math.PI / 2)
    expect(found.angleRad).toBeLessThanOrEqual(Math.PI / 2)
  })

  it('refuses points on one line', () => {
    expect(() =>
      smallestRectangle([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(/one line/)
  })
})
