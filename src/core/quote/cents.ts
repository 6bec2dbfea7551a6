import { InvariantError } from '../units'

/** How far a product of decimals may miss its true value, relative: keeps "half" a half (1.005 × 100 = 100.49999…). */
const HALF_NUDGE = 4 * Number.EPSILON
const GREATEST_CENTS = Number.MAX_SAFE_INTEGER

/**
 * Whole cents of an amount: the one place where money is rounded.
 * @param cents finite; halves go away from zero
 * @throws InvariantError when it is not finite or too large to be exact
 * Rules: QUO-1.
 */
export function wholeCents(cents: number): number {
  if (!(Math.abs(cents) <= GREATEST_CENTS)) throw new InvariantError('money is finite', { cents })
  const rounded = Math.round(Math.abs(cents) * (1 + HALF_NUDGE))
  return cents < 0 && rounded > 0 ? -rounded : rounded
}

/** Sum of whole cents; exact. */
export const sumCents = (amounts: readonly number[]): number => amounts.reduce((sum, cents) => sum + cents, 0)

/**
 * An amount shared out in whole cents that add up to it.
 * @param totalCents  whole, ≥ 0
 * @param weights     ≥ 0; all zero: everything goes to the first
 * @returns as many amounts as weights, none above or below its exact share by a cent or more
 * Method: each share rounded down, then a cent to those that lost most, the earlier first.
 * Rules: QUO-5.
 */
export function sharedCents(totalCents: number, weights: readonly number[]): readonly number[] {
  const whole = sumCents(weights)
  if (weights.length === 0) return []
  if (!(whole > 0)) return weights.map((_, at) => (at === 0 ? totalCents : 0))
  const exact = weights.map((weight) => (totalCents * weight) / whole)
  const shares = exact.map(Math.floor)
  const order = exact
    .map((value, at) => ({ at, lost: value - Math.floor(value) }))
    .toSorted((a, b) => b.lost - a.lost || a.at - b.at)
  let left = totalCents - sumCents(shares)
  for (const { at } of order) {
    if (left <= 0) break
    shares[at] = (shares[at] ?? 0) + 1
    left -= 1
  }
  return shares
}
