import type { Plan } from '../../../core/plan'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { MoneyField } from '../../fields/MoneyField'
import { NumberField } from '../../fields/NumberField'
import { SelectField } from '../../fields/SelectField'
import { useShownPlan } from '../../useActive'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { ShareField } from './ShareField'
import { changeShop } from './useBuild'

type Shop = Plan['shop']

/** Currencies of ISO 4217 whose hundredth is in use, so that what is printed adds up to the cent. */
const CURRENCIES = [
  'EUR',
  'USD',
  'GBP',
  'CAD',
  'AUD',
  'NZD',
  'CHF',
  'SEK',
  'NOK',
  'DKK',
  'PLN',
  'CZK',
  'RON',
  'ZAR',
  'BRL',
  'MXN',
  'INR',
  'SGD',
]

function CurrencyField({ currency }: { readonly currency: string }) {
  const codes = CURRENCIES.includes(currency) ? CURRENCIES : [currency, ...CURRENCIES]
  return (
    <SelectField<string>
      label={bt('terms-currency')}
      value={currency}
      options={codes.map((value) => ({ value, label: value }))}
      onChange={(chosen) => changeShop({ currency: chosen })}
    />
  )
}

function HourFields({ shop }: { readonly shop: Shop }) {
  const { overhead } = shop
  return (
    <div className="field-pairs">
      <CurrencyField currency={shop.currency} />
      <MoneyField
        label={bt('terms-hour')}
        cents={shop.hourCents}
        onChange={(hourCents) => changeShop({ hourCents: hourCents ?? 0 })}
      />
      <MoneyField
        label={bt('terms-overhead-hour')}
        cents={overhead.centsPerHour}
        onChange={(cents) => changeShop({ overhead: { ...overhead, centsPerHour: cents ?? 0 } })}
      />
      <ShareField
        label={bt('terms-overhead-share')}
        fraction={overhead.fraction}
        onChange={(fraction) => changeShop({ overhead: { ...overhead, fraction: fraction ?? 0 } })}
      />
      <ShareField
        label={bt('terms-failure')}
        fraction={shop.failureFraction}
        onChange={(failureFraction) => changeShop({ failureFraction: failureFraction ?? 0 })}
      />
      <NumberField
        label={bt('terms-day')}
        value={shop.hoursPerDay}
        limits={{ least: 0.5, greatest: 24 }}
        decimals={Number.isInteger(shop.hoursPerDay) ? 0 : 1}
        onChange={(hoursPerDay) => changeShop({ hoursPerDay })}
      />
    </div>
  )
}

function PriceFields({ shop }: { readonly shop: Shop }) {
  const { profit } = shop
  return (
    <>
      <ChoiceGroup<Shop['profit']['kind']>
        label={bt('terms-profit')}
        value={profit.kind}
        onChange={(kind) => changeShop({ profit: { ...profit, kind } })}
        options={(['margin', 'mark-up'] as const).map((value) => ({ value, label: bt(`terms-${value}`) }))}
      />
      <div className="field-pairs">
        <ShareField
          label={bt('terms-profit-share')}
          fraction={profit.fraction}
          greatest={0.95}
          onChange={(fraction) => changeShop({ profit: { ...profit, fraction: fraction ?? 0 } })}
        />
        <MoneyField
          label={bt('terms-round')}
          cents={shop.roundUpToCents}
          onChange={(cents) => changeShop({ roundUpToCents: Math.min(1_000_000, Math.max(1, cents ?? 1)) })}
        />
        <ShareField
          label={bt('terms-tax')}
          fraction={shop.taxFraction}
          onChange={(taxFraction) => changeShop({ taxFraction: taxFraction ?? 0 })}
        />
        <ShareField
          label={bt('terms-deposit')}
          fraction={shop.depositFraction}
          onChange={(depositFraction) => changeShop({ depositFraction: depositFraction ?? 0 })}
        />
      </div>
    </>
  )
}

/** Currency, hours, overhead, profit, tax and deposit: of the shop, for all options. */
export function TermsPart() {
  const { shop } = useShownPlan()
  return (
    <PanelPart title={bt('terms-title')}>
      <HourFields shop={shop} />
      <PriceFields shop={shop} />
    </PanelPart>
  )
}
