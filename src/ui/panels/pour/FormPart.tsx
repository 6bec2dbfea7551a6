import { type Option, type ResinResult, USUAL_WOOD_KG_PER_M3 } from '../../../core/plan'
import { USUAL_SEAL_COAT_G_PER_M2 } from '../../../core/resin'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { LengthField, OptionalLengthField } from '../../fields/LengthField'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { changeResin } from './usePour'

type Resin = Option['resin']

interface Props {
  readonly resin: Resin
  readonly set: (changes: Partial<Resin>) => void
}

function SpaceFields({ resin, set }: Props) {
  const { form } = resin
  return (
    <div className="field-pairs">
      <LengthField
        label={t('form-clearance')}
        valueMm={resin.clearanceMm}
        limits={{ leastMm: 0, greatestMm: 100 }}
        onChange={(clearanceMm) => set({ clearanceMm })}
      />
      <OptionalLengthField
        label={t('form-height')}
        valueMm={form.heightMm}
        limits={{ leastMm: 1, greatestMm: 1000 }}
        placeholder={t('form-measured-not')}
        onChange={(heightMm) => set({ form: { ...form, heightMm } })}
      />
      <OptionalLengthField
        label={t('form-flood')}
        valueMm={resin.floodMm}
        limits={{ leastMm: 0.1, greatestMm: 50 }}
        placeholder={t('form-flood-off')}
        onChange={(floodMm) => set({ floodMm })}
      />
      <LengthField
        label={t('form-cup')}
        valueMm={resin.underCupMm}
        limits={{ leastMm: 0, greatestMm: 100 }}
        onChange={(underCupMm) => set({ underCupMm })}
      />
      <LengthField
        label={t('form-base')}
        valueMm={form.baseThicknessMm}
        limits={{ leastMm: 3, greatestMm: 200 }}
        onChange={(baseThicknessMm) => set({ form: { ...form, baseThicknessMm } })}
      />
      <LengthField
        label={t('form-bars')}
        valueMm={form.barEveryMm}
        limits={{ leastMm: 100, greatestMm: 3000 }}
        onChange={(barEveryMm) => set({ form: { ...form, barEveryMm } })}
      />
      <OptionalNumberField
        label={t('form-wood-density')}
        value={resin.woodDensityKgPerM3}
        limits={{ least: 50, greatest: 2000 }}
        suffix={t('unit-kg-per-m3')}
        placeholder={t('form-wood-usual', { density: String(USUAL_WOOD_KG_PER_M3) })}
        onChange={(woodDensityKgPerM3) => set({ woodDensityKgPerM3 })}
      />
    </div>
  )
}

function SealFields({ resin: { sealCoat }, set }: Props) {
  const grams = sealCoat.kind === 'coat' ? sealCoat.gramsPerM2 : USUAL_SEAL_COAT_G_PER_M2
  const chosen = sealCoat.kind === 'none' ? 'none' : sealCoat.covers
  return (
    <>
      <ChoiceGroup<'none' | 'edges' | 'edges-and-faces'>
        label={t('form-seal')}
        value={chosen}
        onChange={(covers) =>
          set({
            sealCoat: covers === 'none' ? { kind: 'none' } : { kind: 'coat', covers, gramsPerM2: grams },
          })
        }
        options={(['none', 'edges', 'edges-and-faces'] as const).map((value) => ({
          value,
          label: t(`form-seal-${value}`),
        }))}
      />
      {sealCoat.kind === 'coat' && (
        <NumberField
          label={t('form-seal-grams')}
          value={sealCoat.gramsPerM2}
          limits={{ least: 1, greatest: 2000 }}
          onChange={(gramsPerM2) => set({ sealCoat: { ...sealCoat, gramsPerM2 } })}
        />
      )}
    </>
  )
}

/** The form, what stands in it, and what was measured in it. */
export function FormPart({
  option,
  result,
}: {
  readonly option: Option
  readonly result: ResinResult | null
}) {
  const format = useFormat()
  const { resin } = option
  const set = (changes: Partial<Resin>) => changeResin(option.id, changes)
  const rows = [
    { name: t('form-clearance-takes'), litres: result?.clearanceLitres ?? 0 },
    { name: t('form-flood-takes'), litres: result?.floodCoatLitres ?? 0 },
  ]
  const shown = rows
    .filter(({ litres }) => litres > 0)
    .map(({ name, litres }) => ({ name, figure: format.volume(litres) }))
  const sealKg = result?.sealKg ?? 0
  const seal = sealKg > 0 ? [{ name: t('form-seal-needs'), figure: format.mass(sealKg) }] : []
  return (
    <PanelPart title={t('form-title')}>
      <SpaceFields resin={resin} set={set} />
      <SealFields resin={resin} set={set} />
      <OptionalNumberField
        label={t('form-measured')}
        hint={t('form-measured-hint')}
        value={resin.measuredLitres}
        limits={{ least: 0.001, greatest: 5000 }}
        suffix={t('unit-litres')}
        placeholder={t('form-measured-not')}
        onChange={(measuredLitres) => set({ measuredLitres })}
      />
      <Figures rows={[...shown, ...seal]} />
    </PanelPart>
  )
}
