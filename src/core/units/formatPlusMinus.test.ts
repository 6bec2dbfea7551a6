import { describe, expect, it } from 'vitest'
import { formatPlusMinus } from './formatPlusMinus'
import { InvariantError } from './invariantError'

const MM = { system: 'mm' } as const
const INCH = { system: 'inch', fraction: 16 } as const

describe('formatPlusMinus', () => {
  // By hand: two deviations, rounded up to the graduation.
  it.each([
    [2.9, '± 6 mm'],
    [3, '± 6 mm'],
    [3.01, '± 7 mm'],
    [0.5, '± 1 mm'],
    [0.2, '± 0.4 mm'],
    [0.21, '± 0.5 mm'],
    [0, '± 0.1 mm'],
    [60.2, '± 121 mm'],
  ])('UNI-13 states two deviations of a length of %f mm rounded up: %s', (sd, text) => {
    expect(formatPlusMinus(sd, 'length', MM)).toBe(text)
  })

  it('UNI-13 rounds inches up to the finest fraction shown', () => {
    // 2 × 3 mm = 0.2362 in = 3.78 sixteenths
    expect(formatPlusMinus(3, 'length', INCH)).toBe('± 1/4″')
    expect(formatPlusMinus(0.01, 'length', INCH)).toBe('± 1/16″')
    // exactly one sixteenth stays one
    expect(formatPlusMinus(25.4 / 32, 'length', INCH)).toBe('± 1/16″')
  })

  it('UNI-13 states areas and volumes with as many decimals as they need', () => {
    expect(formatPlusMinus(12_300, 'area', MM)).toBe('± 0.03 m²')
    expect(formatPlusMinus(2_000, 'area', MM)).toBe('± 0.004 m²')
    expect(formatPlusMinus(92_903.04, 'area', INCH)).toBe('± 2.0 ft²')
    expect(formatPlusMinus(0.16, 'volume', MM)).toBe('± 0.4 L')
    expect(formatPlusMinus(0.02, 'volume', MM)).toBe('± 0.04 L')
    // 2 × 0.3 L = 0.1585 US gal
    expect(formatPlusMinus(0.3, 'volume', INCH)).toBe('± 0.2 US gal')
  })

  it('UNI-13 never understates: the amount in the text is never below two deviations', () => {
    for (let n = 1; n < 400; n++) {
      const sd = n * 0.037
      const amount = Number(formatPlusMinus(sd, 'length', MM).replace(/[^\d.]/g, ''))
      expect(amount).toBeGreaterThanOrEqual(2 * sd * (1 - 1e-8))
      expect(amount).toBeLessThan(2 * sd + 1.01)
    }
  })

  it('refuses what is no deviation', () => {
    expect(() => formatPlusMinus(-1, 'length', MM)).toThrow(InvariantError)
    expect(() => formatPlusMinus(Number.NaN, 'area', MM)).toThrow(InvariantError)
  })
})
