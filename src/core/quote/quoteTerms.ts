/** What a cost is for, in the order of the maker's page. */
export const COST_GROUPS = [
  'wood',
  'resin',
  'sheets',
  'consumables',
  'blades',
  'finish',
  'keys',
  'hours',
  'base',
  'delivery',
] as const

export type CostGroup = (typeof COST_GROUPS)[number]

export interface CostItem {
  readonly group: CostGroup
  readonly name: string
  readonly quantity: number
  /** What is counted: `L`, `h`, `m`; empty: pieces. */
  readonly unit: string
  readonly unitCents: number
}

export interface QuoteTerms {
  /** Set aside for a pour or a slab that fails, as a share of all direct costs. */
  readonly failureFraction: number
  /** Rent, power, machines: by the hour worked, and as a share of all direct costs; usually one of them. */
  readonly overhead: { readonly centsPerHour: number; readonly fraction: number }
  /** margin: share of the price; mark-up: share of the cost. */
  readonly profit: { readonly kind: 'margin' | 'mark-up'; readonly fraction: number }
  /** The price before tax is raised to whole multiples of this; 1: to the cent. */
  readonly roundUpToCents: number
  readonly taxFraction: number
  /** Of the price with tax. */
  readonly depositFraction: number
}

export interface QuoteLine extends CostItem {
  readonly amountCents: number
}

/** Every amount in whole cents. */
export interface Quote {
  readonly lines: readonly QuoteLine[]
  readonly directCents: number
  readonly failureCents: number
  readonly overheadCents: number
  readonly costCents: number
  readonly profitCents: number
  /** What rounding the price up adds. */
  readonly roundingCents: number
  readonly priceCents: number
  readonly taxCents: number
  readonly totalCents: number
  readonly depositCents: number
  readonly balanceCents: number
  /** Profit with rounding as a share of the price, and of the cost: two words for one amount. Null without a price. */
  readonly marginFraction: number | null
  readonly markUpFraction: number | null
  readonly hours: number
}
