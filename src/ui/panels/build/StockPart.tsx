import type { Plan } from '../../../core/plan'
import { SHEET_SIZES } from '../../../core/form'
import { newId } from '../../../state/newId'
import { LengthField } from '../../fields/LengthField'
import { MoneyField } from '../../fields/MoneyField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TextField } from '../../fields/TextField'
import { useDisplay } from '../../text/useDisplay'
import { useFormat } from '../../text/useFormat'
import { useShownPlan } from '../../useActive'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { RemovableCard } from './RemovableCard'
import { changeShop } from './useBuild'

type Stock = Plan['shop']['sheets'][number]

interface EntryProps {
  readonly sheet: Stock
  readonly number: number
  readonly set: (changes: Partial<Stock>) => void
  readonly onRemove: () => void
}

const SIZE = { leastMm: 10, greatestMm: 20_000 }

function Entry({ sheet, number, set, onRemove }: EntryProps) {
  const title = sheet.name === '' ? bt('stock-number', { number }) : sheet.name
  return (
    <RemovableCard title={title} onRemove={onRemove}>
      <TextField label={bt('stock-name')} value={sheet.name} onChange={(name) => set({ name })} />
      <div className="field-pairs">
        <LengthField
          label={bt('stock-length')}
          valueMm={sheet.lengthMm}
          limits={SIZE}
          onChange={(lengthMm) => set({ lengthMm })}
        />
        <LengthField
          label={bt('stock-width')}
          valueMm={sheet.widthMm}
          limits={SIZE}
          onChange={(widthMm) => set({ widthMm })}
        />
        <OptionalNumberField
          label={bt('stock-count')}
          value={sheet.count}
          limits={{ least: 0, greatest: 100 }}
          placeholder={bt('stock-any')}
          onChange={(count) => set({ count: count === null ? null : Math.round(count) })}
        />
        <MoneyField
          label={bt('stock-cost')}
          cents={sheet.costCents}
          onChange={(costCents) => set({ costCents: costCents ?? 0 })}
        />
      </div>
    </RemovableCard>
  )
}

function AddRow({
  onAdd,
}: {
  readonly onAdd: (size: Pick<Stock, 'lengthMm' | 'widthMm' | 'count'>) => void
}) {
  const format = useFormat()
  const system = useDisplay().system === 'inch' ? 'imperial' : 'metric'
  return (
    <>
      <p className="field-label">{bt('stock-add-size')}</p>
      <div className="button-row">
        {SHEET_SIZES.filter((size) => size.system === system).map(({ id, lengthMm, widthMm }) => (
          <button
            key={id}
            type="button"
            className="button button-small"
            onClick={() => onAdd({ lengthMm, widthMm, count: null })}
          >
            {format.length(lengthMm)} × {format.length(widthMm)}
          </button>
        ))}
        <button
          type="button"
          className="button button-small"
          onClick={() => onAdd({ lengthMm: 1000, widthMm: 500, count: 1 })}
        >
          {bt('stock-add')}
        </button>
      </div>
    </>
  )
}

/** The sheets that the form may be sawn from. */
export function StockPart() {
  const { sheets, sheetKerfMm } = useShownPlan().shop
  const set = (next: readonly Stock[]) => changeShop({ sheets: [...next] })
  return (
    <PanelPart title={bt('stock-title')} note={bt('stock-note')}>
      <ul className="cards">
        {sheets.map((sheet, at) => (
          <Entry
            key={sheet.id}
            sheet={sheet}
            number={at + 1}
            set={(changes) =>
              set(sheets.map((other) => (other === sheet ? { ...sheet, ...changes } : other)))
            }
            onRemove={() => set(sheets.filter((other) => other !== sheet))}
          />
        ))}
      </ul>
      <AddRow onAdd={(size) => set([...sheets, { id: newId(), name: '', costCents: 0, ...size }])} />
      <LengthField
        label={bt('stock-kerf')}
        valueMm={sheetKerfMm}
        limits={{ leastMm: 0, greatestMm: 20 }}
        onChange={(kerf) => changeShop({ sheetKerfMm: kerf })}
      />
    </PanelPart>
  )
}
