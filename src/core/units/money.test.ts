import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatMoney, formatMoneyPlain, parseMoneyCents } from './money'

const SEED = 20_250_404
console.info(`money properties: seed ${SEED}`)

const LIMITS = { leastCents: 0, greatestCents: 1_000_000_000 }
const codeOf = (text: string): string => {
  const cents = parseMoneyCents(text, LIMITS)
  return cents.ok ? `read as ${cents.value}` : cents.problem.code
}

describe('money', () => {
  it('UNI-11 is shown in the way of the locale, without a minus before zero', () => {
    expect(formatMoney(125_050, 'EUR', 'en-IE')).toBe('€1,250.50')
    expect(formatMoney(125_050, 'EUR', 'de-DE').replaceAll('\u00a0', ' ')).toBe('1.250,50 €')
    expect(formatMoney(-1_250, 'USD', 'en-US')).toBe('-$12.50')
    expect(formatMoney(-0, 'USD', 'en-US')).toBe('$0.00')
    expect(formatMoney(-30, 'JPY', 'en-US')).toBe('¥0')
  })

  it('UNI-11 is read to the cent with a dot or a comma', () => {
    const READ: readonly (readonly [string, number])[] = [
      ['1250', 125_000],
      ['1250.5', 125_050],
      ['1250,50', 125_050],
      ['1 250.50', 125_050],
      ['.05', 5],
      ['19.99', 1_999],
      ['0', 0],
      ['12.', 1_200],
    ]
    for (const [text, value] of READ) expect(parseMoneyCents(text, LIMITS)).toEqual({ ok: true, value })
  })

  it('UNI-11 is refused with a code', () => {
    expect(codeOf(' ')).toBe('money-empty')
    expect(codeOf('.')).toBe('money-not-understood')
    expect(codeOf('€12')).toBe('money-not-understood')
    expect(codeOf('12 EUR')).toBe('money-not-understood')
    expect(codeOf('-12')).toBe('money-negative')
    expect(codeOf('1,250')).toBe('money-ambiguous-comma')
    expect(codeOf('1,250.00')).toBe('money-ambiguous-comma')
    expect(codeOf('1.250')).toBe('money-finer-than-cents')
    expect(codeOf('9'.repeat(400))).toBe('money-too-large')
    expect(parseMoneyCents('3', { leastCents: 500, greatestCents: 900 })).toEqual({
      ok: false,
      problem: { code: 'money-too-small', values: { text: '3', leastCents: 500, greatestCents: 900 } },
    })
  })

  it('UNI-11 is whole cents or our own bug', () => {
    expect(() => formatMoney(0.5, 'EUR', 'en')).toThrow('whole cents')
    expect(() => formatMoneyPlain(NaN)).toThrow('whole cents')
  })

  it('UNI-11 read back is the same amount', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: LIMITS.greatestCents }), (cents) => {
        expect(parseMoneyCents(formatMoneyPlain(cents), LIMITS)).toEqual({ ok: true, value: cents })
      }),
      { seed: SEED, numRuns: 3_000 },
    )
  })
})
