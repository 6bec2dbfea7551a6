import { EXAMPLE_SHEETS } from '../../../core/resin'
import type { Option } from '../../../core/plan'
import { CheckField } from '../../fields/CheckField'
import { TextField } from '../../fields/TextField'
import { t } from '../../text/t'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from './MoreInputs'
import { DepthFields, MixFields, type Sheet } from './SheetFigures'
import { LimitFields, PackFields, TimeFields } from './SheetTimes'
import { changeResin } from './usePour'

const EXAMPLES = ['slowCasting', 'medium', 'thinCoating'] as const

function ExampleChoice({ onChoose }: { readonly onChoose: (sheet: Sheet) => void }) {
  return (
    <div className="button-row" role="group" aria-label={t('sheet-back-to-example')}>
      <span className="field-label">{t('sheet-back-to-example')}</span>
      {EXAMPLES.map((name) => (
        <button
          key={name}
          type="button"
          className="button button-small"
          onClick={() => onChoose(EXAMPLE_SHEETS[name])}
        >
          {t(`sheet-example-${name}`)}
        </button>
      ))}
    </div>
  )
}

/** What the maker reads off the sheet of the product in hand. */
export function SheetPart({ option }: { readonly option: Option }) {
  const { sheet } = option.resin
  const set = (changes: Partial<Sheet>) => changeResin(option.id, { sheet: { ...sheet, ...changes } })
  return (
    <PanelPart title={t('sheet-title')}>
      {sheet.isExample && <p className="example-warning">{t('sheet-example-warning')}</p>}
      <TextField label={t('sheet-name')} value={sheet.name} onChange={(name) => set({ name })} />
      <CheckField
        label={t('sheet-is-mine')}
        checked={!sheet.isExample}
        onChange={(isMine) => set({ isExample: !isMine })}
      />
      <MoreInputs title={t('sheet-depth')}>
        <DepthFields sheet={sheet} set={set} />
      </MoreInputs>
      <MoreInputs title={t('sheet-mix')}>
        <MixFields sheet={sheet} set={set} />
      </MoreInputs>
      <MoreInputs title={t('sheet-times')}>
        <TimeFields sheet={sheet} set={set} />
      </MoreInputs>
      <MoreInputs title={t('sheet-place')}>
        <LimitFields sheet={sheet} set={set} />
      </MoreInputs>
      <MoreInputs title={t('sheet-packs')}>
        <PackFields sheet={sheet} set={set} />
      </MoreInputs>
      <ExampleChoice onChoose={(example) => changeResin(option.id, { sheet: example })} />
    </PanelPart>
  )
}
