import { InvariantError } from './invariantError'
import { hasAmbiguousComma, plainSigns } from './lengthText'
import { ok, problem, type Result } from './result'

const wholeCents = (cents: number): number => {
  if (!Number.isSafeInteger(cents)) throw new InvariantError('money is whole cents', { cents })
  return cents === 0 ? 0 : cents
}

/**
 * @param cents         whole hundredths of the currency
 * @param currencyCode  three letters of ISO 4217
 * @param locale        BCP 47 tag: where the sign, the grouping and the decimal mark come from
 * @returns e.g. `€1,250.50`; no minus before zero
 * @throws InvariantError when the amount is not whole cents; RangeError from Intl when the code or tag is malformed
 * Rules: UNI-11.
 */
export function formatMoney(cents: number, currencyCode: string, locale: string): string {
  return new Intl.NumberFormat(locale, {
    style: 'currency',
    currency: currencyCode,
    signDisplay: 'negative',
  }).format(wholeCents(cents) / 100)
}

/** Whole cents as a field shows them for typing: `1250.50`. Rules: UNI-11. */
export function formatMoneyPlain(cents: number): string {
  return (wholeCents(cents) / 100).toFixed(2)
}

export interface MoneyLimits {
  readonly leastCents: number
  readonly greatestCents: number
}

const MONEY = /^(\d*)(?:[.,](\d*))?$/

/** Whole cents of `1250`, `1250.5` or `1250,50`, without limits. */
function centsOf(plain: string, text: string): Result<number> {
  if (/^- ?[\d.,]+$/.test(plain)) return problem('money-negative', { text })
  if (hasAmbiguousComma(plain)) return problem('money-ambiguous-comma', { text })
  const [, whole = '', hundredths = ''] = MONEY.exec(plain) ?? []
  if (whole + hundredths === '') return problem('money-not-understood', { text })
  if (hundredths.length > 2) return problem('money-finer-than-cents', { text })
  return ok(Number(whole) * 100 + Number(hundredths.padEnd(2, '0')))
}

/**
 * Reads an amount of money, to the cent, digit by digit (no binary fraction is made on the way).
 * @param text    digits with a dot or a comma before the cents; no currency sign
 * @param limits  both allowed
 * @returns whole cents; problems, each with `text`: money-empty (no values), money-not-understood, money-negative,
 *   money-ambiguous-comma, money-finer-than-cents, and money-too-small, money-too-large with `leastCents`, `greatestCents`
 * Rules: UNI-11.
 */
export function parseMoneyCents(text: string, limits: MoneyLimits): Result<number> {
  const shown = text.trim().slice(0, 60)
  if (shown === '') return problem('money-empty')
  const cents = centsOf(plainSigns(text), shown)
  if (!cents.ok) return cents
  const values = { text: shown, ...limits }
  if (cents.value < limits.leastCents) return problem('money-too-small', values)
  return cents.value > limits.greatestCents ? problem('money-too-large', values) : cents
}
