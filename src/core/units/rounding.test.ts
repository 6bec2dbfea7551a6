import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countSteps, fixedDecimals, significantText } from './rounding'

const SEED = 20_250_403
console.info(`rounding properties: seed ${SEED}`)

describe('rounding', () => {
  it('UNI-3 rounds halves away from zero, also those that binary fractions just miss', () => {
    expect(countSteps(0.5, 1)).toBe(1)
    expect(countSteps(-0.5, 1)).toBe(-1)
    expect(countSteps(2.5, 1)).toBe(3)
    expect(fixedDecimals(1.005, 2)).toBe('1.01')
    expect(fixedDecimals(-1.005, 2)).toBe('−1.01')
    expect(fixedDecimals(1.0049999, 2)).toBe('1.00')
  })

  it('UNI-3 gives zero without a sign', () => {
    expect(Object.is(countSteps(-0.2, 1), 0)).toBe(true)
    expect(Object.is(countSteps(-0, 1), 0)).toBe(true)
    expect(fixedDecimals(-0.004, 2, true)).toBe('0.00')
  })

  it('UNI-3 is never more than half a step off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom(1, 8, 10, 16, 32, 100),
        (value, stepsPerUnit) => {
          const count = countSteps(value, stepsPerUnit)
          expect(Number.isInteger(count)).toBe(true)
          expect(Math.abs(count / stepsPerUnit - value)).toBeLessThanOrEqual(0.5 / stepsPerUnit + 1e-9)
        },
      ),
      { seed: SEED, numRuns: 3_000 },
    )
  })

  it('UNI-10 keeps the significant digits through a carry and within its limits', () => {
    const three = { digits: 3, leastDecimals: 1, greatestDecimals: 3 }
    expect(significantText(0.9996, three)).toBe('1.00')
    expect(significantText(0.12345, three)).toBe('0.123')
    expect(significantText(0.0012345, three)).toBe('0.001')
    expect(significantText(9.999, three)).toBe('10.0')
    expect(significantText(1234.56, three)).toBe('1234.6')
    expect(significantText(0, three)).toBe('0.0')
    expect(significantText(-0.00001, three)).toBe('0.0')
  })
})
