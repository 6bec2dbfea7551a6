import { type Block, STROKES, type TableColumn, tableRow } from '../../drawing'
import { formatMoney } from '../../units'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

/** The language of the texts: amounts are written as its readers expect them. */
const LOCALE = 'en'

/** Amounts in the currency of the job. */
export const moneyOf = ({ plan }: Pick<SheetInput, 'plan'>): ((cents: number) => string) => {
  const { currency } = plan.shop
  return (cents) => formatMoney(cents, currency, LOCALE)
}

export interface AmountRow {
  readonly name: string
  readonly amount: string
  readonly isTotal?: boolean
}

/** Names with amounts ranged right; totals are bold, under a stronger rule. */
export function amountRows(rows: readonly AmountRow[], widthMm: number): readonly Block[] {
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.68 },
    { widthMm: widthMm * 0.32, anchor: 'end' },
  ]
  return rows.map(({ name, amount, isTotal = false }) =>
    tableRow(columns, [name, amount], {
      sizeMm: isTotal ? SIZE.heading : SIZE.body,
      spaceBeforeMm: 0,
      padMm: isTotal ? 1.8 : 1.3,
      weight: isTotal ? 'bold' : 'regular',
      ruleBelow: isTotal ? STROKES.rule : STROKES.thin,
    }),
  )
}
