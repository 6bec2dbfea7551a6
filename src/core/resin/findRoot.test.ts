import { describe, expect, it } from 'vitest'
import { findRoot, type RootSearch } from './findRoot'

const search: RootSearch = { guess: 1, step: 0.1, least: -50, greatest: 50, tolerance: 1e-6 }

describe('findRoot', () => {
  it('RES-11 it finds the root of a straight line, a curve and a cliff', () => {
    expect(findRoot((x) => x - 7, search)).toBeCloseTo(7, 6)
    expect(findRoot((x) => Math.exp(x) - 5, search)).toBeCloseTo(Math.log(5), 6)
    expect(findRoot((x) => Math.tanh(60 * (x + 3)) + 0.2, search)).toBeCloseTo(-3 - Math.atanh(0.2) / 60, 5)
  })

  it('RES-11 a smooth function takes few evaluations: each is a whole simulation', () => {
    let count = 0
    findRoot(
      (x) => {
        count += 1
        return 3 * (x - 1.37) + (x - 1.37) ** 3
      },
      { ...search, tolerance: 2e-3 },
    )
    expect(count).toBeLessThanOrEqual(12)
  })

  it('RES-11 a function without a root has none', () => {
    expect(findRoot(() => 1, search)).toBeNull()
    expect(findRoot(() => -1, search)).toBeNull()
  })

  it('RES-11 a guess outside of the ends, or on the root, is no trouble', () => {
    expect(findRoot((x) => x - 7, { ...search, guess: 900 })).toBeCloseTo(7, 6)
    expect(findRoot((x) => x - 1, search)).toBe(1)
  })

  it('RES-11 a value that is no number is our own bug', () => {
    expect(() => findRoot(() => NaN, search)).toThrow('no number')
  })
})
