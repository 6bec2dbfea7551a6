import { describe, expect, it } from 'vitest'
import { applyIsometry, type Point, slabPoint } from '../../core/geometry'
import { movedPose, turnBetween, turnedOverPose, turnedPose } from './poseEdits'

const pose = { xMm: 100, yMm: 50, angleRad: 0.3, turnedOver: false }
const over = { xMm: -20, yMm: 75, angleRad: -1.2, turnedOver: true }

function expectClose(found: Point, expected: Point): void {
  expect(found[0]).toBeCloseTo(expected[0], 9)
  expect(found[1]).toBeCloseTo(expected[1], 9)
}

describe('poseEdits', () => {
  it('moves every point by the same step', () => {
    expect(movedPose(pose, 10, -0.1)).toEqual({ ...pose, xMm: 110, yMm: 49.9 })
  })

  it.each([pose, over])('turns every point about the pivot, and leaves what lies there (%#)', (start) => {
    const pivot: Point = [400, 300]
    const quarter = turnedPose(start, pivot, Math.PI / 2)
    for (const p of [
      [0, 0],
      [2000, 0],
      [0, 900],
    ] as const) {
      const [x, y] = applyIsometry(start, p, slabPoint)
      // by hand: a quarter turn takes (dx, dy) to (−dy, dx), y down
      expectClose(applyIsometry(quarter, p, slabPoint), [400 - (y - 300), 300 + (x - 400)])
    }
  })

  it.each([pose, over])(
    'turns over about the pivot: left stays left, and twice is as before (%#)',
    (start) => {
      const pivot: Point = [400, 300]
      const turned = turnedOverPose(start, pivot)
      expect(turned.turnedOver).toBe(!start.turnedOver)
      const [x, y] = applyIsometry(start, [7, 9], slabPoint)
      expectClose(applyIsometry(turned, [7, 9], slabPoint), [x, 600 - y])
      expectClose(applyIsometry(turnedOverPose(turned, pivot), [7, 9], slabPoint), [x, y])
    },
  )

  it('measures the turn between two directions, to the right positive', () => {
    expect(turnBetween([0, 0], [5, 0], [0, 2])).toBeCloseTo(Math.PI / 2, 12)
    expect(turnBetween([1, 1], [2, 1], [2, 0])).toBeCloseTo(-Math.PI / 4, 12)
  })
})
