import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatMoney } from '../units'
import { sharedCents, sumCents, wholeCents } from './cents'
import { clientQuote } from './clientQuote'
import { quoteOf } from './quoteOf'
import { COST_GROUPS, type CostItem, type QuoteTerms } from './quoteTerms'
import { finishLitres, slabCents, woodMoney } from './woodPrice'

const SEED = 20_261_129
console.info(`quote properties: seed ${SEED}`)

const TERMS: QuoteTerms = {
  failureFraction: 0.05,
  overhead: { centsPerHour: 1500, fraction: 0 },
  profit: { kind: 'margin', fraction: 0.25 },
  roundUpToCents: 1000,
  taxFraction: 0.2,
  depositFraction: 0.5,
}
const item = (group: CostItem['group'], quantity: number, unitCents: number): CostItem => ({
  group,
  name: group,
  quantity,
  unit: '',
  unitCents,
})

const share = (max: number) => fc.double({ min: 0, max, noNaN: true })
const anyItems = fc.array(
  fc.record({
    group: fc.constantFrom(...COST_GROUPS),
    name: fc.constant('x'),
    quantity: fc.double({ min: 0, max: 500, noNaN: true }),
    unit: fc.constant(''),
    unitCents: fc.integer({ min: 0, max: 500_000 }),
  }),
  { maxLength: 30 },
)
const anyTerms: fc.Arbitrary<QuoteTerms> = fc.record({
  failureFraction: share(1),
  overhead: fc.record({ centsPerHour: fc.integer({ min: 0, max: 20_000 }), fraction: share(1) }),
  profit: fc.record({ kind: fc.constantFrom('margin' as const, 'mark-up' as const), fraction: share(0.9) }),
  roundUpToCents: fc.constantFrom(1, 100, 1000, 5000),
  taxFraction: share(0.3),
  depositFraction: share(1),
})

describe('a quote', () => {
  it('QUO-1 QUO-2 QUO-4 is worked out by hand', () => {
    const quote = quoteOf([item('wood', 1, 64_000), item('resin', 7.5, 1999), item('hours', 20, 4000)], TERMS)
    // 7.5 · 19.99 = 149.925 → 149.93. Direct 640 + 149.93 + 800 = 1589.93; 5 % = 79.4965 → 79.50; overhead 300.
    expect(quote).toMatchObject({
      directCents: 158_993,
      failureCents: 7950,
      overheadCents: 30_000,
      hours: 20,
    })
    // 1969.43/0.75 = 2625.9066… → 2625.91, profit 656.48; up to 2630. Tax 526; total 3156; half of it 1578.
    expect(quote).toMatchObject({
      costCents: 196_943,
      profitCents: 65_648,
      roundingCents: 409,
      priceCents: 263_000,
      taxCents: 52_600,
      totalCents: 315_600,
      depositCents: 157_800,
      balanceCents: 157_800,
    })
  })

  it('QUO-3 tells a margin of a quarter and a mark-up of a third as one profit', () => {
    const margin = quoteOf([item('wood', 1, 90_000)], { ...TERMS, failureFraction: 0, roundUpToCents: 1 })
    expect(margin.priceCents).toBe(120_000)
    expect(margin.marginFraction).toBeCloseTo(0.25, 12)
    expect(margin.markUpFraction).toBeCloseTo(1 / 3, 12)
    const profit = { kind: 'mark-up', fraction: 0.25 } as const
    expect(
      quoteOf([item('wood', 1, 90_000)], { ...TERMS, failureFraction: 0, roundUpToCents: 1, profit })
        .priceCents,
    ).toBe(112_500)
    expect(() => quoteOf([], { ...TERMS, profit: { kind: 'margin', fraction: 1 } })).toThrow('margin')
    expect(quoteOf([], TERMS)).toMatchObject({ priceCents: 0, marginFraction: null, markUpFraction: null })
  })

  it('QUO-2 QUO-4 QUO-5 adds up to the cent, whatever it holds', () => {
    fc.assert(
      fc.property(anyItems, anyTerms, (items, terms) => {
        const q = quoteOf(items, terms)
        expect(sumCents(q.lines.map(({ amountCents }) => amountCents))).toBe(q.directCents)
        expect(q.directCents + q.failureCents + q.overheadCents).toBe(q.costCents)
        expect(q.costCents + q.profitCents + q.roundingCents).toBe(q.priceCents)
        expect(q.priceCents % terms.roundUpToCents).toBe(0)
        expect(q.roundingCents).toBeGreaterThanOrEqual(0)
        expect(q.roundingCents).toBeLessThan(terms.roundUpToCents)
        expect(q.priceCents + q.taxCents).toBe(q.totalCents)
        expect(q.depositCents + q.balanceCents).toBe(q.totalCents)
        const client = clientQuote(q)
        expect(sumCents(client.lines.map(({ amountCents }) => amountCents))).toBe(q.priceCents)
        for (const cents of [q.profitCents, q.taxCents, q.failureCents, q.overheadCents])
          expect(Number.isInteger(cents)).toBe(true)
      }),
      { seed: SEED },
    )
  })

  it('QUO-2 adds up as it is printed, in every way that currencies are written', () => {
    const read = (text: string): number => Number(text.replace(/[^\d]/g, ''))
    fc.assert(
      fc.property(
        anyItems,
        fc.constantFrom(
          ['EUR', 'de-DE'],
          ['EUR', 'en-IE'],
          ['USD', 'en-US'],
          ['GBP', 'en-GB'],
          ['CHF', 'de-CH'],
          ['SEK', 'sv-SE'],
          ['CAD', 'fr-CA'],
        ),
        (items, [currency = '', locale = '']) => {
          const q = quoteOf(items, TERMS)
          const printed = (cents: number): number => read(formatMoney(cents, currency, locale))
          expect(sumCents(q.lines.map(({ amountCents }) => printed(amountCents)))).toBe(
            printed(q.directCents),
          )
          expect(printed(q.priceCents) + printed(q.taxCents)).toBe(printed(q.totalCents))
        },
      ),
      { seed: SEED, numRuns: 50 },
    )
  })

  it('QUO-5 shows the client the top, the base and the delivery, and nothing else', () => {
    const { lines } = clientQuote(
      quoteOf([item('wood', 1, 50_000), item('hours', 10, 4000), item('delivery', 1, 9000)], TERMS),
    )
    expect(lines.map(({ part }) => part)).toEqual(['top', 'delivery'])
    // The price is 50 000 + 40 000 + 9000 = 99 000; shares 10 : 1.
    expect((lines[0]?.amountCents ?? 0) / (lines[1]?.amountCents ?? 1)).toBeCloseTo(10, 3)
  })
})

describe('cents', () => {
  it('QUO-1 round halves away from zero, also where binary fractions miss them', () => {
    expect([0.5, 1.5, -0.5, 100.4999, 2.4, -2.6].map(wholeCents)).toEqual([1, 2, -1, 100, 2, -3])
    expect(wholeCents(1.005 * 100)).toBe(101)
    expect(Object.is(wholeCents(-0.2), 0)).toBe(true)
    expect(() => wholeCents(NaN)).toThrow('finite')
  })

  it('QUO-5 are shared out to the last one, nobody a cent from the exact share', () => {
    expect(sharedCents(100, [1, 1, 1])).toEqual([34, 33, 33])
    expect(sharedCents(7, [0, 0])).toEqual([7, 0])
    expect(sharedCents(7, [])).toEqual([])
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.array(fc.integer({ min: 1, max: 1e6 }), { minLength: 1, maxLength: 9 }),
        (total, weights) => {
          const shares = sharedCents(total, weights)
          expect(sumCents(shares)).toBe(total)
          shares.forEach((cents, at) => {
            expect(Math.abs(cents - (total * (weights[at] ?? 0)) / sumCents(weights))).toBeLessThan(1 + 1e-6)
          })
        },
      ),
      { seed: SEED },
    )
  })
})

describe('wood as money', () => {
  it('QUO-6 costs by the piece, the board foot, the cubic metre or the kilogram', () => {
    const sold = { boardFeet: 50.5, cubicMetres: 0.12, massKg: 80 }
    expect(slabCents('piece', 64_000, sold)).toBe(64_000)
    expect(slabCents('board-foot', 1450, sold)).toBe(73_225)
    expect(slabCents('cubic-metre', 500_000, sold)).toBe(60_000)
    expect(slabCents('kilogram', 850, sold)).toBe(68_000)
    expect(slabCents('kilogram', 850, { ...sold, massKg: null })).toBeNull()
  })

  it('QUO-6 is in the table or waste, together the price', () => {
    expect(woodMoney(64_001, 0.55)).toEqual({ inTableCents: 35_201, wasteCents: 28_800 })
    expect(woodMoney(100, 1.7)).toEqual({ inTableCents: 100, wasteCents: 0 })
  })

  it('QUO-7 takes finish for every coat and face (by hand)', () => {
    // 2 · 1.8 m² + 5.8 m · 0.04 = 3.832 m²; three coats at 12 m² a litre.
    expect(finishLitres(3_832_000, 3, 12)).toBeCloseTo(0.958, 9)
  })
})
