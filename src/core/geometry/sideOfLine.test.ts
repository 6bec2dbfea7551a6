import { describe, expect, it } from 'vitest'
import { sideOfLine, signedDistanceToLineMm, turnOf } from './sideOfLine'

describe('sideOfLine', () => {
  it('is positive to the right of the walk as seen on screen, y down (GEO-9)', () => {
    expect(sideOfLine([5, 1], [0, 0], [10, 0])).toBe(1)
    expect(sideOfLine([5, -1], [0, 0], [10, 0])).toBe(-1)
    expect(sideOfLine([15, 0], [0, 0], [10, 0])).toBe(0)
  })

  it('is exact where plain products round to nought (GEO-9)', () => {
    // Kettner et al. 2008, "Classroom examples of robustness problems": points near the diagonal, steps of 2^-53.
    const ulp = 2 ** -53
    const naive = (px: number, py: number): number => (12 - px) * (24 - py) - (12 - py) * (24 - px)
    let naiveMistakes = 0
    for (let i = 0; i < 64; i += 1)
      for (let j = 0; j < 64; j += 1) {
        const [x, y] = [0.5 + i * ulp, 0.5 + j * ulp]
        const exact = Math.sign(y - x)
        expect(sideOfLine([x, y], [12, 12], [24, 24]) === exact).toBe(true)
        if (Math.sign(naive(x, y)) !== exact) naiveMistakes += 1
      }
    expect(naiveMistakes).toBeGreaterThan(100)
  })

  it('has the sign of the shoelace: a positive triangle turns positively (GEO-1)', () => {
    expect(turnOf([0, 0], [300, 0], [0, 400])).toBe(120_000)
  })
})

describe('signedDistanceToLineMm', () => {
  it('measures square to the line, in mm, with the side as sign', () => {
    expect(signedDistanceToLineMm([3, 4], [0, 0], [10, 0])).toBe(4)
    expect(signedDistanceToLineMm([3, 4], [10, 0], [0, 0])).toBe(-4)
    expect(signedDistanceToLineMm([0, 5], [0, 0], [4, 3])).toBeCloseTo(4, 12)
  })

  it('refuses a line through one point', () => {
    expect(() => signedDistanceToLineMm([0, 0], [1, 1], [1, 1])).toThrow(/two different points/)
  })
})
