import type { Option } from '../../../core/plan'
import { buildWords } from '../../../core/plan'
import { COST_GROUPS, type CostGroup } from '../../../core/quote'
import { newId } from '../../../state/newId'
import { MoneyField } from '../../fields/MoneyField'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { SelectField } from '../../fields/SelectField'
import { TextField } from '../../fields/TextField'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { RemovableCard } from './RemovableCard'
import { changeCosts } from './useBuild'

type OwnCost = Option['quote']['own'][number]

/** Hours have their steps. */
const GROUPS = COST_GROUPS.filter((group) => group !== 'hours')

interface EntryProps {
  readonly cost: OwnCost
  readonly number: number
  readonly set: (changes: Partial<OwnCost>) => void
  readonly onRemove: () => void
}

function Entry({ cost, number, set, onRemove }: EntryProps) {
  const title = cost.name === '' ? bt('costs-own-number', { number }) : cost.name
  return (
    <RemovableCard title={title} onRemove={onRemove}>
      <div className="field-pairs">
        <TextField label={bt('costs-name')} value={cost.name} onChange={(name) => set({ name })} />
        <SelectField<CostGroup>
          label={bt('quote-line')}
          value={cost.group}
          options={GROUPS.map((value) => ({ value, label: buildWords.group(value) }))}
          onChange={(group) => set({ group })}
        />
        <OptionalNumberField
          label={bt('costs-quantity')}
          value={cost.quantity}
          limits={{ least: 0, greatest: 100_000 }}
          onChange={(quantity) => quantity !== null && set({ quantity })}
        />
        <MoneyField
          label={bt('costs-unit')}
          cents={cost.unitCents}
          onChange={(unitCents) => set({ unitCents: unitCents ?? 0 })}
        />
      </div>
    </RemovableCard>
  )
}

/** What the option costs besides what is worked out. */
export function CostsPart({ option }: { readonly option: Option }) {
  const { baseCents, deliveryCents, keys, own } = option.quote
  const setOwn = (next: readonly OwnCost[]) => changeCosts(option.id, { own: [...next] })
  return (
    <PanelPart title={bt('costs-title')}>
      <div className="field-pairs">
        <MoneyField
          label={bt('costs-base')}
          cents={baseCents}
          onChange={(cents) => changeCosts(option.id, { baseCents: cents ?? 0 })}
        />
        <MoneyField
          label={bt('costs-delivery')}
          cents={deliveryCents}
          onChange={(cents) => changeCosts(option.id, { deliveryCents: cents ?? 0 })}
        />
        <NumberField
          label={bt('costs-keys')}
          value={keys}
          limits={{ least: 0, greatest: 500 }}
          onChange={(count) => changeCosts(option.id, { keys: Math.round(count) })}
        />
      </div>
      <ul className="cards">
        {own.map((cost, at) => (
          <Entry
            key={cost.id}
            cost={cost}
            number={at + 1}
            set={(changes) => setOwn(own.map((other) => (other === cost ? { ...cost, ...changes } : other)))}
            onRemove={() => setOwn(own.filter((other) => other !== cost))}
          />
        ))}
      </ul>
      <div className="button-row">
        <button
          type="button"
          className="button button-small"
          onClick={() =>
            setOwn([
              ...own,
              { id: newId(), group: 'consumables', name: '', quantity: 1, unit: '', unitCents: 0 },
            ])
          }
        >
          {bt('costs-add')}
        </button>
      </div>
    </PanelPart>
  )
}
