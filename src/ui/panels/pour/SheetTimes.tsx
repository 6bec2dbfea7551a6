import { MoneyField } from '../../fields/MoneyField'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TemperatureField } from '../../fields/TemperatureField'
import { TextField } from '../../fields/TextField'
import { t } from '../../text/t'
import type { Sheet, SheetProps } from './SheetFigures'

const ANY = { least: -1_000_000, greatest: 1_000_000 }
const USUAL_TEST = { massKg: 1, temperatureC: 21 }

/** A working time is stated for some batch at some temperature; emptied minutes mean that none is. */
function WorkingTimeFields({ sheet, set }: SheetProps) {
  const { workingTime } = sheet
  const patch = (changes: Partial<NonNullable<Sheet['workingTime']>>) =>
    set({ workingTime: { minutes: 60, ...USUAL_TEST, ...workingTime, ...changes } })
  return (
    <>
      <OptionalNumberField
        label={t('sheet-working-minutes')}
        value={workingTime?.minutes ?? null}
        limits={ANY}
        suffix={t('unit-minutes')}
        placeholder={t('sheet-says-nothing')}
        onChange={(minutes) => (minutes === null ? set({ workingTime: null }) : patch({ minutes }))}
      />
      {workingTime !== null && (
        <>
          <NumberField
            label={t('sheet-working-mass')}
            value={workingTime.massKg}
            limits={ANY}
            decimals={1}
            suffix={t('unit-kg')}
            onChange={(massKg) => patch({ massKg })}
          />
          <TemperatureField
            label={t('sheet-working-at')}
            celsius={workingTime.temperatureC}
            onChange={(temperatureC) => patch({ temperatureC })}
          />
        </>
      )}
    </>
  )
}

const HOURS = [
  ['sheet-recoat-least', 'recoatLeastHours'],
  ['sheet-recoat-greatest', 'recoatGreatestHours'],
  ['sheet-demould', 'demouldHours'],
] as const

export function TimeFields({ sheet, set }: SheetProps) {
  return (
    <div className="field-pairs">
      <WorkingTimeFields sheet={sheet} set={set} />
      {HOURS.map(([label, key]) => (
        <OptionalNumberField
          key={key}
          label={t(label)}
          value={sheet[key]}
          limits={ANY}
          suffix={t('unit-hours')}
          placeholder={t('sheet-says-nothing')}
          onChange={(value) => set({ [key]: value })}
        />
      ))}
    </div>
  )
}

export function LimitFields({ sheet, set }: SheetProps) {
  const { greatestDyeFraction } = sheet
  return (
    <div className="field-pairs">
      <TemperatureField
        label={t('sheet-least-room')}
        celsius={sheet.leastRoomC}
        placeholder={t('sheet-says-nothing')}
        onEmpty={() => set({ leastRoomC: null })}
        onChange={(leastRoomC) => set({ leastRoomC })}
      />
      <TemperatureField
        label={t('sheet-least-resin')}
        celsius={sheet.leastResinC}
        placeholder={t('sheet-says-nothing')}
        onEmpty={() => set({ leastResinC: null })}
        onChange={(leastResinC) => set({ leastResinC })}
      />
      <OptionalNumberField
        label={t('sheet-greatest-dye')}
        value={greatestDyeFraction === null ? null : Math.round(greatestDyeFraction * 1e5) / 1e3}
        limits={{ least: 0, greatest: 100 }}
        suffix="%"
        placeholder={t('sheet-says-nothing')}
        onChange={(percent) => set({ greatestDyeFraction: percent === null ? null : percent / 100 })}
      />
    </div>
  )
}

const MOST_PACKS = 20

export function PackFields({ sheet, set }: SheetProps) {
  const { packs } = sheet
  const patch = (index: number, changes: Partial<Sheet['packs'][number]>) =>
    set({ packs: packs.map((pack, at) => (at === index ? { ...pack, ...changes } : pack)) })
  return (
    <>
      {packs.map((pack, index) => (
        // A pack has no more of an identity than its place in the list.
        <div className="field-triple" key={index}>
          <TextField
            label={t('sheet-pack-name')}
            value={pack.name}
            onChange={(name) => patch(index, { name })}
          />
          <OptionalNumberField
            label={t('sheet-pack-litres')}
            value={pack.litres}
            limits={ANY}
            onChange={(litres) => litres !== null && patch(index, { litres })}
          />
          <MoneyField
            label={t('sheet-pack-price')}
            cents={pack.priceCents}
            onChange={(priceCents) => patch(index, { priceCents: priceCents ?? 0 })}
          />
          <button
            type="button"
            className="button button-small"
            onClick={() => set({ packs: packs.filter((_, at) => at !== index) })}
          >
            {t('remove')}
            <span className="unseen"> {pack.name}</span>
          </button>
        </div>
      ))}
      {packs.length < MOST_PACKS && (
        <button
          type="button"
          className="button button-small"
          onClick={() => set({ packs: [...packs, { name: '', litres: 1, priceCents: 0 }] })}
        >
          {t('sheet-pack-add')}
        </button>
      )}
    </>
  )
}
