import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatAngle, formatNumber, formatPercent } from './formatQuantity'
import { parseAngle, parseNumberWithin, parsePercent } from './parseNumber'
import type { Result } from './result'

const SEED = 20_250_405
console.info(`parseNumber properties: seed ${SEED}`)

const WIDE = { least: -1e9, greatest: 1e9 }
const told = (read: Result<number>): number | string => (read.ok ? read.value : read.problem.code)

describe('parseNumberWithin', () => {
  it('UNI-12 reads a dot or a comma as the decimal sign', () => {
    expect(told(parseNumberWithin(' 12.5 ', WIDE))).toBe(12.5)
    expect(told(parseNumberWithin('12,5', WIDE))).toBe(12.5)
    expect(told(parseNumberWithin('−3', WIDE))).toBe(-3)
    expect(told(parseNumberWithin('+ .5', WIDE))).toBe(0.5)
    expect(told(parseNumberWithin('1 200', WIDE))).toBe(1200)
    expect(Object.is(told(parseNumberWithin('-0', WIDE)), 0)).toBe(true)
  })

  it('UNI-6 refuses a comma before exactly three digits', () => {
    expect(told(parseNumberWithin('1,200', WIDE))).toBe('number-ambiguous-comma')
    expect(told(parsePercent('1,200'))).toBe('percent-ambiguous-comma')
    expect(told(parseAngle('1,200°'))).toBe('angle-ambiguous-comma')
    expect(told(parseNumberWithin('1.200', WIDE))).toBe(1.2)
  })

  it('UNI-12 refuses with a code', () => {
    expect(told(parseNumberWithin('', WIDE))).toBe('number-empty')
    for (const text of [
      '.',
      'many',
      '1e5',
      '1.2.3',
      '--1',
      '1/2',
      '0x10',
      'Infinity',
      '9'.repeat(61),
      '5 %',
    ]) {
      expect(told(parseNumberWithin(text, WIDE))).toBe('number-not-understood')
    }
    expect(parseNumberWithin('11', { least: 1, greatest: 10 })).toEqual({
      ok: false,
      problem: { code: 'number-too-large', values: { text: '11', least: 1, greatest: 10 } },
    })
    expect(told(parseNumberWithin('0', { least: 1, greatest: 10 }))).toBe('number-too-small')
    expect(told(parseNumberWithin('1', { least: 1, greatest: 10 }))).toBe(1)
    expect(told(parseNumberWithin('10', { least: 1, greatest: 10 }))).toBe(10)
  })
})

describe('parsePercent and parseAngle', () => {
  it('UNI-12 reads per cents as fractions', () => {
    expect(told(parsePercent('12,5 %'))).toBe(0.125)
    expect(told(parsePercent('8'))).toBe(0.08)
    expect(told(parsePercent('%'))).toBe('percent-not-understood')
    expect(told(parsePercent('-1'))).toBe('percent-too-small')
    expect(told(parsePercent('101 %'))).toBe('percent-too-large')
    expect(told(parsePercent('150', { least: 0, greatest: 200 }))).toBe(1.5)
  })

  it('UNI-12 reads degrees as radians', () => {
    expect(told(parseAngle('90°'))).toBeCloseTo(Math.PI / 2, 15)
    expect(told(parseAngle('−22.5 deg'))).toBeCloseTo(-Math.PI / 8, 15)
    expect(told(parseAngle('45 degrees'))).toBeCloseTo(Math.PI / 4, 15)
    expect(told(parseAngle('361'))).toBe('angle-too-large')
    expect(told(parseAngle('°'))).toBe('angle-not-understood')
    expect(told(parseAngle(''))).toBe('angle-empty')
  })

  it('UNI-12 read back what the formatters write, without drift', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (value) => {
        const percent = formatPercent(value, { signed: true })
        const angle = formatAngle(value)
        const plain = formatNumber(value, { decimals: 3 })
        expect(formatPercent(Number(told(parsePercent(percent, WIDE))), { signed: true })).toBe(percent)
        expect(formatAngle(Number(told(parseAngle(angle))))).toBe(angle)
        expect(formatNumber(Number(told(parseNumberWithin(plain, WIDE))), { decimals: 3 })).toBe(plain)
      }),
      { seed: SEED, numRuns: 3_000 },
    )
  })
})
