import {
  type Block,
  flowBlocks,
  paragraph,
  stackBlocks,
  STROKES,
  type TableColumn,
  tableRow,
} from '../../drawing'
import { formatNumber, formatPercent } from '../../units'
import type { BuildResult } from '../build/buildResult'
import { priceTexts } from '../text/en/ui/price'
import { type AmountRow, amountRows, moneyOf } from './buildMoney'
import { revisionMark } from './revisionMark'
import { contentBox, type SheetPage } from './sheetFrame'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'
import { aboutText } from './slabPage'
import { pairOfWritingLines, writingLine } from './writingLine'

/** A letter's column: longer lines are hard to read. */
const COLUMN_MM = 186

const share = (fraction: number): string => formatPercent(fraction, { decimals: 1 }).replaceAll(' ', '\u00a0')

function endRows(input: SheetInput, { quote }: BuildResult['price']): readonly AmountRow[] {
  const money = moneyOf(input)
  const { taxFraction, depositFraction } = input.plan.shop
  return [
    { name: priceTexts['quote-price'], amount: money(quote.priceCents), isTotal: true },
    { name: priceTexts['quote-tax']({ share: share(taxFraction) }), amount: money(quote.taxCents) },
    { name: priceTexts['quote-total'], amount: money(quote.totalCents), isTotal: true },
    {
      name: priceTexts['quote-deposit']({ share: share(depositFraction) }),
      amount: money(quote.depositCents),
    },
    { name: priceTexts['quote-balance'], amount: money(quote.balanceCents) },
  ]
}

function topWords({ text, length, footprint, option, slab }: SheetInput): string {
  const size = text.sheetSizeByThickness({
    length: length(footprint.finishedLengthMm),
    width: length(footprint.finishedWidthMm),
    thickness: length(option.table.thicknessMm),
  })
  return text.sheetQuoteTop({ size, wood: slab.species ?? '' })
}

/** What a client is handed: what is made, what it costs, what is paid when; no inside figure. Rules: SHT-15. */
export function clientQuotePages(input: SheetInput): readonly SheetPage[] {
  const { build, text, plan } = input
  if (build === null) return []
  const box = contentBox(input.paper, input.orientation)
  const widthMm = Math.min(box.widthMm, COLUMN_MM)
  const money = moneyOf(input)
  const lines = build.price.client.lines.map(({ part, amountCents }) => ({
    name: part === 'top' ? topWords(input) : priceTexts[`part-${part}`],
    amount: money(amountCents),
  }))
  const say = { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 4 }
  const blocks: readonly Block[] = [
    paragraph(text.sheetQuoteFor({ name: plan.name }), { sizeMm: SIZE.verdict, weight: 'bold', widthMm }),
    paragraph(input.dateText, { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 2 }),
    ...amountRows([...lines, ...endRows(input, build.price)], widthMm).map((row, k) =>
      k === 0 ? { ...row, spaceBeforeMm: 7 } : row,
    ),
    paragraph(text.sheetQuoteNature, { ...say, spaceBeforeMm: 8 }),
    paragraph(text.sheetQuoteAgrees({ mark: revisionMark(plan) }), { ...say, weight: 'bold' }),
    writingLine(text.sheetQuoteHolds, widthMm / 3),
    pairOfWritingLines([text.sheetQuoteClient, text.sheetQuoteMaker], widthMm),
  ]
  return pagesOf(input, blocks, text.sheetTitleQuote)
}

function pagesOf(input: SheetInput, blocks: readonly Block[], title: string): readonly SheetPage[] {
  const box = contentBox(input.paper, input.orientation)
  return flowBlocks(blocks, box.heightMm, box.heightMm).map((page, k) => ({
    title: k === 0 ? title : input.text.sheetContinued({ title }),
    about: aboutText(input),
    items: stackBlocks(page, box),
  }))
}

const quantity = (value: number, unit: string): string => {
  const number = formatNumber(value, { decimals: Number.isInteger(value) ? 0 : 2 })
  return unit === '' ? number : `${number}\u00a0${unit}`
}

function lineRows(input: SheetInput, { quote }: BuildResult['price'], widthMm: number): readonly Block[] {
  const money = moneyOf(input)
  const columns: readonly TableColumn[] = [
    { widthMm: widthMm * 0.46 },
    { widthMm: widthMm * 0.16, anchor: 'end' },
    { widthMm: widthMm * 0.18, anchor: 'end' },
    { widthMm: widthMm * 0.2, anchor: 'end' },
  ]
  const head = tableRow(
    columns,
    [
      priceTexts['quote-line'],
      priceTexts['quote-quantity'],
      priceTexts['costs-unit'],
      priceTexts['quote-amount'],
    ],
    {
      sizeMm: SIZE.note,
      weight: 'bold',
      spaceBeforeMm: 3,
      padMm: 0.8,
      ruleBelow: STROKES.rule,
      keepWithNext: true,
    },
  )
  const rows = quote.lines.map((line) =>
    tableRow(
      columns,
      [line.name, quantity(line.quantity, line.unit), money(line.unitCents), money(line.amountCents)],
      { sizeMm: SIZE.body, spaceBeforeMm: 0, padMm: 1.1, ruleBelow: STROKES.thin },
    ),
  )
  return [head, ...rows]
}

function insideRows(input: SheetInput, price: BuildResult['price']): readonly AmountRow[] {
  const money = moneyOf(input)
  const { quote, wood } = price
  const fraction = (value: number | null) => (value === null ? priceTexts['quote-none'] : share(value))
  const { failureFraction } = input.plan.shop
  return [
    { name: priceTexts['quote-direct'], amount: money(quote.directCents), isTotal: true },
    {
      name: priceTexts['quote-failure']({ share: share(failureFraction) }),
      amount: money(quote.failureCents),
    },
    { name: priceTexts['quote-overhead'], amount: money(quote.overheadCents) },
    { name: priceTexts['quote-cost'], amount: money(quote.costCents), isTotal: true },
    { name: priceTexts['quote-profit'], amount: money(quote.profitCents) },
    { name: priceTexts['quote-rounding'], amount: money(quote.roundingCents) },
    ...endRows(input, price),
    { name: priceTexts['quote-margin'], amount: fraction(quote.marginFraction) },
    { name: priceTexts['quote-mark-up'], amount: fraction(quote.markUpFraction) },
    ...(wood === null
      ? []
      : [
          { name: priceTexts['slab-in-table'], amount: money(wood.inTableCents) },
          { name: priceTexts['slab-waste'], amount: money(wood.wasteCents) },
        ]),
  ]
}

/** The quote with all that goes into it. Rules: SHT-15. */
export function makersQuotePages(input: SheetInput): readonly SheetPage[] {
  const { build, text } = input
  if (build === null) return []
  const widthMm = Math.min(contentBox(input.paper, input.orientation).widthMm, COLUMN_MM)
  const blocks = [
    paragraph(text.sheetQuoteInside, { sizeMm: SIZE.heading, weight: 'bold', widthMm }),
    ...lineRows(input, build.price, widthMm),
    ...amountRows(insideRows(input, build.price), widthMm),
  ]
  return pagesOf(input, blocks, text.sheetTitleMakersQuote)
}
