import { useState } from 'react'
import { type BuildResult, buildWords, type Plan } from '../../../core/plan'
import { COST_GROUPS, type QuoteLine } from '../../../core/quote'
import { formatPercent } from '../../../core/units'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { type Format, useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { quantityText } from './quantityText'

type Price = BuildResult['price']

interface Props {
  readonly price: Price
  readonly shop: Plan['shop']
}

const share = (fraction: number): string => formatPercent(fraction, { decimals: 1 })

interface Row {
  readonly key: string
  readonly name: string
  readonly quantity: string
  readonly amountCents: number
}

/** Hours are one line here: their steps stand in the order of work. */
function rowsOf(lines: readonly QuoteLine[], hours: number, format: Format): readonly Row[] {
  return COST_GROUPS.flatMap((group): readonly Row[] => {
    const own = lines.filter((line) => line.group === group)
    if (own.length === 0) return []
    if (group === 'hours') {
      const amountCents = own.reduce((sum, line) => sum + line.amountCents, 0)
      return [{ key: group, name: buildWords.group(group), quantity: format.hours(hours), amountCents }]
    }
    return own.map((line, at) => ({
      key: `${group}/${at}`,
      name: line.name,
      quantity: quantityText(line.quantity, line.unit),
      amountCents: line.amountCents,
    }))
  })
}

function sumsOf({ quote }: Price, shop: Plan['shop']) {
  const { failureFraction } = shop
  return [
    { name: bt('quote-direct'), cents: quote.directCents, isTotal: true },
    { name: bt('quote-failure', { share: share(failureFraction) }), cents: quote.failureCents },
    { name: bt('quote-overhead'), cents: quote.overheadCents },
    { name: bt('quote-cost'), cents: quote.costCents, isTotal: true },
    { name: bt('quote-profit'), cents: quote.profitCents },
    { name: bt('quote-rounding'), cents: quote.roundingCents },
    { name: bt('quote-price'), cents: quote.priceCents, isTotal: true },
  ]
}

const endOf = ({ quote }: Price, { taxFraction, depositFraction }: Plan['shop']) => [
  { name: bt('quote-tax', { share: share(taxFraction) }), cents: quote.taxCents },
  { name: bt('quote-total'), cents: quote.totalCents, isTotal: true },
  { name: bt('quote-deposit', { share: share(depositFraction) }), cents: quote.depositCents },
  { name: bt('quote-balance'), cents: quote.balanceCents },
]

function MakersPage({ price, shop }: Props) {
  const format = useFormat()
  const { quote } = price
  const none = bt('quote-none')
  const amounts = [...sumsOf(price, shop), ...endOf(price, shop)]
  return (
    <>
      <table className="quote-lines">
        <thead>
          <tr>
            <th scope="col">{bt('quote-line')}</th>
            <th scope="col" className="number">
              {bt('quote-quantity')}
            </th>
            <th scope="col" className="number">
              {bt('quote-amount')}
            </th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(quote.lines, quote.hours, format).map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.name}</th>
              <td className="number">{row.quantity}</td>
              <td className="number">{format.money(row.amountCents)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Figures
        rows={[
          ...amounts.map(({ cents, ...row }) => ({ ...row, figure: format.money(cents) })),
          {
            name: bt('quote-margin'),
            figure: quote.marginFraction === null ? none : share(quote.marginFraction),
          },
          {
            name: bt('quote-mark-up'),
            figure: quote.markUpFraction === null ? none : share(quote.markUpFraction),
          },
        ]}
      />
      <p className="note">{bt('quote-margin-note')}</p>
    </>
  )
}

function ClientsPage({ price, shop }: Props) {
  const format = useFormat()
  return (
    <>
      <Figures
        rows={[
          ...price.client.lines.map(({ part, amountCents }) => ({
            name: bt(`part-${part}`),
            figure: format.money(amountCents),
          })),
          { name: bt('quote-price'), figure: format.money(price.client.priceCents), isTotal: true },
          ...endOf(price, shop).map(({ cents, ...row }) => ({ ...row, figure: format.money(cents) })),
        ]}
      />
      <p className="note">{bt('quote-client-note')}</p>
    </>
  )
}

/** The quote: with all that is inside for the maker, and as the client is shown it. */
export function QuotePart(props: Props) {
  const [reader, setReader] = useState<'maker' | 'client'>('maker')
  return (
    <PanelPart title={bt('quote-title')}>
      <ChoiceGroup<'maker' | 'client'>
        label={bt('quote-view')}
        value={reader}
        onChange={setReader}
        options={[
          { value: 'maker', label: bt('quote-maker') },
          { value: 'client', label: bt('quote-client') },
        ]}
      />
      {reader === 'maker' ? <MakersPage {...props} /> : <ClientsPage {...props} />}
    </PanelPart>
  )
}
