import { describe, expect, it } from 'vitest'
import { cheapestRound } from './closedPath'

/** A repeatable number from 0 to 1. */
const noise = (n: number): number => (Math.sin(n * 12.9898) * 43758.5453) % 1

describe('cheapestRound', () => {
  it('TRC-4 follows a cheap lane round a band, with steps no longer than allowed', () => {
    const count = 60
    const depth = 15
    const lane = (n: number): number => Math.round(7 + 4 * Math.sin((2 * Math.PI * n) / count))
    const costs = Float32Array.from({ length: count * depth }, (_, at) =>
      at % depth === lane(Math.floor(at / depth)) ? 0 : 1,
    )
    const way = cheapestRound(costs, count, depth, { mostStep: 1, stepCost: 0.01 })
    expect([...way]).toEqual(Array.from({ length: count }, (_, n) => lane(n)))
  })

  it('TRC-4 is closed, and the cheapest of all closed ways through its first place', () => {
    const count = 6
    const depth = 3
    for (let seed = 0; seed < 20; seed++) {
      const costs = Float32Array.from({ length: count * depth }, (_, at) => Math.abs(noise(at + 100 * seed)))
      const costOf = (way: ArrayLike<number>): number => {
        let sum = 0
        for (let n = 0; n < count; n++) {
          const step = (way[n] ?? 0) - (way[(n + 1) % count] ?? 0)
          if (Math.abs(step) > 1) return Infinity
          sum += (costs[n * depth + (way[n] ?? 0)] ?? 0) + 0.3 * step * step
        }
        return sum
      }
      const found = cheapestRound(costs, count, depth, { mostStep: 1, stepCost: 0.3 })
      let least = Infinity
      for (let code = 0; code < depth ** count; code++) {
        const way = Array.from({ length: count }, (_, n) => Math.floor(code / depth ** n) % depth)
        if (way[0] === found[0]) least = Math.min(least, costOf(way))
      }
      expect(costOf(found)).toBeCloseTo(least, 5)
    }
  })
})
