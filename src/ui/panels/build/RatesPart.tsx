import type { Plan } from '../../../core/plan'
import { MoneyField } from '../../fields/MoneyField'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TextField } from '../../fields/TextField'
import { useShownPlan } from '../../useActive'
import { MoreInputs } from '../pour/MoreInputs'
import { bt } from './bt'
import { changeShop } from './useBuild'

type Finish = Plan['shop']['finish']

const RATES = [
  ['rates-caulk', 'caulkCentsPerM'],
  ['rates-tape', 'tapeCentsPerM'],
  ['rates-release', 'releaseCentsPerM2'],
  ['rates-drip', 'dripSheetCentsPerM2'],
  ['rates-screw', 'screwCents'],
  ['rates-blade', 'bladeCentsPerM'],
  ['rates-key', 'keyCents'],
] as const

/** What small things cost, and how far the finish goes. */
export function RatesPart() {
  const { prices, finish } = useShownPlan().shop
  const setFinish = (changes: Partial<Finish>) => changeShop({ finish: { ...finish, ...changes } })
  return (
    <MoreInputs title={bt('rates-title')}>
      <div className="field-pairs">
        {RATES.map(([label, key]) => (
          <MoneyField
            key={key}
            label={bt(label)}
            cents={prices[key]}
            onChange={(cents) => changeShop({ prices: { ...prices, [key]: cents ?? 0 } })}
          />
        ))}
        <TextField label={bt('finish-name')} value={finish.name} onChange={(name) => setFinish({ name })} />
        <NumberField
          label={bt('finish-coats')}
          value={finish.coats}
          limits={{ least: 0, greatest: 50 }}
          onChange={(coats) => setFinish({ coats: Math.round(coats) })}
        />
        <OptionalNumberField
          label={bt('finish-cover')}
          value={finish.coverM2PerLitre}
          limits={{ least: 0.1, greatest: 200 }}
          onChange={(cover) => cover !== null && setFinish({ coverM2PerLitre: cover })}
        />
        <MoneyField
          label={bt('finish-litre')}
          cents={finish.centsPerLitre}
          onChange={(cents) => setFinish({ centsPerLitre: cents ?? 0 })}
        />
      </div>
    </MoreInputs>
  )
}
