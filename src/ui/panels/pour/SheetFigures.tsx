import type { Option } from '../../../core/plan'
import { OptionalLengthField } from '../../fields/LengthField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TemperatureField } from '../../fields/TemperatureField'
import { t } from '../../text/t'

export type Sheet = Option['resin']['sheet']
type Ratio = Sheet['ratioByVolume']

export interface SheetProps {
  readonly sheet: Sheet
  readonly set: (changes: Partial<Sheet>) => void
}

/** Anything that can be typed is kept; the result says what it cannot be. */
const ANY = { least: -1_000_000, greatest: 1_000_000 }
const ANY_LENGTH = { leastMm: 0, greatestMm: 20_000 }

interface RatioProps {
  readonly label: string
  readonly ratio: Ratio
  readonly onChange: (ratio: Ratio) => void
}

/** Both boxes emptied: the sheet states no such ratio. */
function RatioFields({ label, ratio, onChange }: RatioProps) {
  const set = (part: 'resin' | 'hardener') => (value: number | null) => {
    if (value === null) onChange(null)
    else onChange({ resin: ratio?.resin ?? 100, hardener: ratio?.hardener ?? 100, [part]: value })
  }
  return (
    <fieldset className="choice">
      <legend className="field-label">{label}</legend>
      <div className="field-pairs">
        {(['resin', 'hardener'] as const).map((part) => (
          <OptionalNumberField
            key={part}
            label={t(`sheet-ratio-${part}`)}
            value={ratio?.[part] ?? null}
            limits={ANY}
            placeholder={t('sheet-says-nothing')}
            onChange={set(part)}
          />
        ))}
      </div>
    </fieldset>
  )
}

export function MixFields({ sheet, set }: SheetProps) {
  const densities = [
    ['sheet-resin-density', 'resinDensityKgPerM3'],
    ['sheet-hardener-density', 'hardenerDensityKgPerM3'],
    ['sheet-mixed-density', 'mixedDensityKgPerM3'],
  ] as const
  return (
    <>
      <RatioFields
        label={t('sheet-ratio-volume')}
        ratio={sheet.ratioByVolume}
        onChange={(ratioByVolume) => set({ ratioByVolume })}
      />
      <RatioFields
        label={t('sheet-ratio-mass')}
        ratio={sheet.ratioByMass}
        onChange={(ratioByMass) => set({ ratioByMass })}
      />
      <div className="field-pairs">
        {densities.map(([label, key]) => (
          <OptionalNumberField
            key={key}
            label={t(label)}
            value={sheet[key]}
            limits={ANY}
            suffix={t('unit-kg-per-m3')}
            placeholder={t('sheet-says-nothing')}
            onChange={(value) => set({ [key]: value })}
          />
        ))}
      </div>
    </>
  )
}

export function DepthFields({ sheet, set }: SheetProps) {
  return (
    <div className="field-pairs">
      <OptionalLengthField
        label={t('sheet-deepest')}
        valueMm={sheet.deepestLayerMm}
        limits={ANY_LENGTH}
        onChange={(value) => value !== null && set({ deepestLayerMm: value })}
      />
      <TemperatureField
        label={t('sheet-reference')}
        celsius={sheet.referenceC}
        onChange={(referenceC) => set({ referenceC })}
      />
      <TemperatureField
        label={t('sheet-surface-limit')}
        celsius={sheet.surfacePeakLimitC}
        greatestC={200}
        onChange={(surfacePeakLimitC) => set({ surfacePeakLimitC })}
      />
      <OptionalNumberField
        label={t('sheet-peak-hours')}
        value={sheet.peakHours}
        limits={ANY}
        suffix={t('unit-hours')}
        placeholder={t('sheet-says-nothing')}
        onChange={(peakHours) => set({ peakHours })}
      />
      <OptionalLengthField
        label={t('sheet-least-layer')}
        valueMm={sheet.leastLayerMm}
        limits={ANY_LENGTH}
        placeholder={t('sheet-says-nothing')}
        onChange={(leastLayerMm) => set({ leastLayerMm })}
      />
      <OptionalLengthField
        label={t('sheet-test-width')}
        valueMm={sheet.testWidthMm}
        limits={ANY_LENGTH}
        placeholder={t('sheet-says-nothing')}
        onChange={(testWidthMm) => set({ testWidthMm })}
      />
      <OptionalNumberField
        label={t('sheet-greatest-mass')}
        value={sheet.greatestMassKg}
        limits={ANY}
        suffix={t('unit-kg')}
        placeholder={t('sheet-says-nothing')}
        onChange={(greatestMassKg) => set({ greatestMassKg })}
      />
    </div>
  )
}
