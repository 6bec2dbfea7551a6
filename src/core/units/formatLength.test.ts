import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength, type LengthFormat } from './formatLength'
import type { LengthDisplay } from './lengthDisplay'
import { parseSignedLength } from './parseLength'

const SEED = 20_250_401
console.info(`formatLength properties: seed ${SEED}`)

const MM: LengthDisplay = { system: 'mm' }
const eighths: LengthDisplay = { system: 'inch', fraction: 8 }
const sixteenths: LengthDisplay = { system: 'inch', fraction: 16 }
const inches = (value: number): number => value * 25.4

describe('formatLength', () => {
  const EXAMPLES: readonly (readonly [
    mm: number,
    display: LengthDisplay,
    format: LengthFormat,
    text: string,
  ])[] = [
    [inches(86.5), sixteenths, {}, '7′ 2 1/2″'],
    [inches(35.375), sixteenths, { feet: 'never' }, '35 3/8″'],
    [inches(23.5), sixteenths, {}, '23 1/2″'],
    [inches(24), sixteenths, {}, '2′ 0″'],
    [inches(23 + 31 / 32), sixteenths, {}, '2′ 0″'],
    [inches(23 + 31 / 32), { system: 'inch', fraction: 32 }, {}, '23 31/32″'],
    [inches(11 + 31 / 32), sixteenths, { feet: 'always' }, '1′ 0″'],
    [inches(11 + 31 / 32), sixteenths, {}, '12″'],
    [inches(11.5), sixteenths, { feet: 'always' }, '11 1/2″'],
    [inches(84.5), sixteenths, {}, '7′ 0 1/2″'],
    [inches(0.5), sixteenths, {}, '1/2″'],
    [inches(3 / 16), eighths, {}, '1/4″'],
    [inches(-3.5), sixteenths, {}, '−3 1/2″'],
    [inches(3.5), sixteenths, { signed: true }, '+3 1/2″'],
    [2199.6, MM, {}, '2200 mm'],
    [2199.5, MM, {}, '2200 mm'],
    [-2199.5, MM, {}, '−2200 mm'],
    [2199.55, MM, { precision: 0.1 }, '2199.6 mm'],
    [2200, MM, { precision: 0.1 }, '2200.0 mm'],
    [12, MM, { signed: true }, '+12 mm'],
  ]
  it.each(EXAMPLES)('UNI-8 writes %f mm for %o %o as %s', (mm, display, format, text) => {
    expect(formatLength(mm, display, format)).toBe(text)
  })

  it('UNI-3 never shows -0', () => {
    for (const mm of [-0, 0, -0.4, 0.4]) {
      expect(formatLength(mm, MM, { signed: true })).toBe('0 mm')
      expect(formatLength(mm, eighths, { signed: true })).toBe('0″')
    }
  })

  it('UNI-3 throws on what is not a finite number', () => {
    expect(() => formatLength(NaN, MM)).toThrow('finite')
    expect(() => formatLength(Infinity, eighths)).toThrow('finite')
  })
})

const display = fc.constantFrom<LengthDisplay>(MM, eighths, sixteenths, { system: 'inch', fraction: 32 })
const format = fc.record<LengthFormat>({
  signed: fc.boolean(),
  precision: fc.constantFrom(1, 0.1),
  feet: fc.constantFrom('from-24-inches', 'always', 'never'),
})
const lengthMm = fc.double({ min: -100_000, max: 100_000, noNaN: true })

const graduationMm = (shown: LengthDisplay, precision: 1 | 0.1 = 1): number =>
  shown.system === 'mm' ? precision : 25.4 / shown.fraction

const readBack = (text: string, shown: LengthDisplay): number => {
  const length = parseSignedLength(text, shown)
  if (!length.ok) throw new Error(`${text}: ${length.problem.code}`)
  return length.value
}

describe('formatLength and parseLength together', () => {
  it('UNI-9 read back within half a graduation, and the text read back is written the same', () => {
    fc.assert(
      fc.property(lengthMm, display, format, (mm, shown, how) => {
        const text = formatLength(mm, shown, how)
        const back = readBack(text, shown)
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(graduationMm(shown, how.precision) / 2 + 1e-9)
        expect(formatLength(back, shown, how)).toBe(text)
      }),
      { seed: SEED, numRuns: 5_000 },
    )
  })

  it('UNI-9 do not drift over 10 000 round trips', () => {
    fc.assert(
      fc.property(lengthMm, display, (mm, shown) => {
        const first = readBack(formatLength(mm, shown), shown)
        let value = first
        for (let trip = 0; trip < 10_000; trip += 1) value = readBack(formatLength(value, shown), shown)
        expect(value).toBe(first)
      }),
      { seed: SEED, numRuns: 8 },
    )
  })
})
