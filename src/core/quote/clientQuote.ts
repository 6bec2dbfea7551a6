import { sharedCents, sumCents } from './cents'
import type { CostGroup, Quote } from './quoteTerms'

/** What a client is shown: the thing that is bought, not what goes into it. */
export type ClientPart = 'top' | 'base' | 'delivery'

export interface ClientLine {
  readonly part: ClientPart
  readonly amountCents: number
}

export interface ClientQuote {
  readonly lines: readonly ClientLine[]
  readonly priceCents: number
  readonly taxCents: number
  readonly totalCents: number
  readonly depositCents: number
  readonly balanceCents: number
}

const PARTS: readonly ClientPart[] = ['top', 'base', 'delivery']

const partOf = (group: CostGroup): ClientPart => (group === 'base' || group === 'delivery' ? group : 'top')

/**
 * The client's page of a quote, without the inside figures.
 * @returns a line for each part that costs something; they add up to the price to the cent
 * Method: failure, overhead, profit and rounding are spread over the parts by their direct costs.
 * Rules: QUO-5.
 */
export function clientQuote(quote: Quote): ClientQuote {
  const direct = PARTS.map((part) =>
    sumCents(quote.lines.filter(({ group }) => partOf(group) === part).map(({ amountCents }) => amountCents)),
  )
  const amounts = sharedCents(quote.priceCents, direct)
  const { priceCents, taxCents, totalCents, depositCents, balanceCents } = quote
  return {
    lines: PARTS.map((part, at) => ({ part, amountCents: amounts[at] ?? 0 })).filter(
      ({ amountCents }) => amountCents !== 0,
    ),
    priceCents,
    taxCents,
    totalCents,
    depositCents,
    balanceCents,
  }
}
