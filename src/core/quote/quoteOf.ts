import { InvariantError } from '../units'
import { sumCents, wholeCents } from './cents'
import type { CostItem, Quote, QuoteLine, QuoteTerms } from './quoteTerms'

const lineOf = (item: CostItem): QuoteLine => ({
  ...item,
  amountCents: wholeCents(item.quantity * item.unitCents),
})

/**
 * The price of a job from its costs.
 * @param items quantities and prices ≥ 0; hours are items of the group `hours` with the unit hour
 * @param terms shares 0 to 1; a margin below 1
 * @returns whole cents; lines add up to direct costs, these with failure and overhead to the cost, that with profit and
 *          rounding to the price, that with tax to the total, deposit and balance to the total
 * @throws InvariantError when a margin is 1 or more
 * Method: each line and each share is rounded once, halves away from zero; everything after that is a sum. Margin m:
 * price = cost/(1 − m); mark-up u: price = cost·(1 + u).
 * Rules: QUO-1, QUO-2, QUO-3, QUO-4.
 */
export function quoteOf(items: readonly CostItem[], terms: QuoteTerms): Quote {
  const lines = items.map(lineOf)
  const directCents = sumCents(lines.map(({ amountCents }) => amountCents))
  const hours = items
    .filter(({ group }) => group === 'hours')
    .reduce((sum, { quantity }) => sum + quantity, 0)
  const failureCents = wholeCents(directCents * terms.failureFraction)
  const overheadCents = wholeCents(
    hours * terms.overhead.centsPerHour + directCents * terms.overhead.fraction,
  )
  const costCents = directCents + failureCents + overheadCents
  const profitCents = profitOf(terms.profit, costCents)
  const unroundedCents = costCents + profitCents
  const step = Math.max(1, Math.round(terms.roundUpToCents))
  const priceCents = Math.ceil(unroundedCents / step) * step
  const taxCents = wholeCents(priceCents * terms.taxFraction)
  const totalCents = priceCents + taxCents
  const depositCents = wholeCents(totalCents * terms.depositFraction)
  return {
    lines,
    directCents,
    failureCents,
    overheadCents,
    costCents,
    profitCents,
    roundingCents: priceCents - unroundedCents,
    priceCents,
    taxCents,
    totalCents,
    depositCents,
    balanceCents: totalCents - depositCents,
    marginFraction: priceCents > 0 ? (priceCents - costCents) / priceCents : null,
    markUpFraction: costCents > 0 ? (priceCents - costCents) / costCents : null,
    hours,
  }
}

function profitOf({ kind, fraction }: QuoteTerms['profit'], costCents: number): number {
  if (kind === 'mark-up') return wholeCents(costCents * fraction)
  if (!(fraction < 1)) throw new InvariantError('a margin is less than the whole price', { fraction })
  return wholeCents(costCents / (1 - fraction)) - costCents
}
