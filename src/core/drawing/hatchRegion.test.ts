import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isPointInRegion, type Point, type Region, regionAreaMm2 } from '../geometry'
import { clipSegment } from './clipSegment'
import { hatchRegion } from './hatchRegion'
import type { Segment } from './sheet'

const SEED = 45
const lengthOf = (segments: readonly Segment[]): number =>
  segments.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0)

const square = (low: number, high: number): Point[] => [
  [low, low],
  [high, low],
  [high, high],
  [low, high],
]
const frame: Region = { outer: square(0.5, 10.5), holes: [square(3.5, 7.5).toReversed()] }

/** A star-shaped ring round a place: it cannot cross itself. */
const star = fc
  .array(fc.double({ min: 4, max: 30, noNaN: true }), { minLength: 5, maxLength: 24 })
  .map((radii): Region => ({
    outer: radii.map((radius, k): Point => {
      const angle = (2 * Math.PI * k) / radii.length
      return [50 + radius * Math.cos(angle), 60 + radius * Math.sin(angle)]
    }),
    holes: [],
  }))

describe('hatchRegion', () => {
  it('DRW-7 fills a square and leaves out its hole', () => {
    // Levels 1 to 10: ten lines of 10 mm, of which the four at 4, 5, 6, 7 lose 4 mm each.
    expect(lengthOf(hatchRegion(frame, { spacingMm: 1, angleRad: 0 }))).toBeCloseTo(10 * 10 - 4 * 4, 9)
  })

  it(`DRW-7 has spacing × length near the area, and lies inside (seed ${SEED})`, () => {
    fc.assert(
      fc.property(star, fc.double({ min: -3, max: 3, noNaN: true }), (region, angleRad) => {
        const spacingMm = 0.25
        const segments = hatchRegion(region, { spacingMm, angleRad })
        const area = regionAreaMm2(region)
        expect(Math.abs(lengthOf(segments) * spacingMm - area)).toBeLessThan(0.03 * area + 1)
        for (const [a, b] of segments) {
          expect(isPointInRegion([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], region)).toBe(true)
        }
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('refuses lines without distance', () => {
    expect(() => hatchRegion(frame, { spacingMm: 0, angleRad: 0 })).toThrow('spacing')
  })
})

describe('clipSegment', () => {
  const box = { xMm: 0, yMm: 0, widthMm: 10, heightMm: 10 }

  it('DRW-7 cuts a line where it leaves the box', () => {
    expect(
      clipSegment(
        [
          [-5, 5],
          [20, 5],
        ],
        box,
      ),
    ).toEqual([
      [0, 5],
      [10, 5],
    ])
    expect(
      clipSegment(
        [
          [-5, -5],
          [5, 5],
        ],
        box,
      ),
    ).toEqual([
      [0, 0],
      [5, 5],
    ])
  })

  it('DRW-7 finds nothing of a line that passes by', () => {
    expect(
      clipSegment(
        [
          [-5, 12],
          [20, 12],
        ],
        box,
      ),
    ).toBeNull()
    expect(
      clipSegment(
        [
          [-6, 5],
          [5, 16],
        ],
        box,
      ),
    ).toBeNull()
  })
})
