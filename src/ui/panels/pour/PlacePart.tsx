import type { Option } from '../../../core/plan'
import { CheckField } from '../../fields/CheckField'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TemperatureField } from '../../fields/TemperatureField'
import { t } from '../../text/t'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from './MoreInputs'
import { changeResin } from './usePour'

type Resin = Option['resin']
type Room = Resin['room']

interface Props {
  readonly resin: Resin
  readonly set: (changes: Partial<Resin>) => void
}

const HOUR = { least: 0, greatest: 24 }
const USUAL_WARMEST_HOUR = 15

function RoomFields({ resin: { room }, set }: Props) {
  const choose = (kind: Room['kind']) => {
    if (kind === room.kind) return
    set({
      room:
        room.kind === 'steady'
          ? { kind: 'swing', meanC: room.roomC, swingC: 3, warmestHour: USUAL_WARMEST_HOUR }
          : { kind: 'steady', roomC: room.meanC },
    })
  }
  return (
    <>
      <ChoiceGroup<Room['kind']>
        label={t('place-room-kind')}
        value={room.kind}
        onChange={choose}
        options={[
          { value: 'steady', label: t('place-room-steady') },
          { value: 'swing', label: t('place-room-swing') },
        ]}
      />
      {room.kind === 'swing' && (
        <div className="field-pairs">
          <TemperatureField
            label={t('place-mean')}
            celsius={room.meanC}
            onChange={(meanC) => set({ room: { ...room, meanC } })}
          />
          <TemperatureField
            label={t('place-swing')}
            celsius={room.swingC}
            leastC={0}
            greatestC={40}
            isDifference
            onChange={(swingC) => set({ room: { ...room, swingC } })}
          />
          <NumberField
            label={t('place-warmest')}
            value={room.warmestHour}
            limits={HOUR}
            onChange={(warmestHour) => set({ room: { ...room, warmestHour } })}
          />
        </div>
      )}
    </>
  )
}

function AirFields({ resin, set }: Props) {
  return (
    <>
      <ChoiceGroup<Resin['air']>
        label={t('place-air')}
        value={resin.air}
        onChange={(air) => set({ air })}
        options={[
          { value: 'still', label: t('place-air-still') },
          { value: 'fans', label: t('place-air-fans') },
        ]}
      />
      <ChoiceGroup<Resin['beneath']>
        label={t('place-beneath')}
        value={resin.beneath}
        onChange={(beneath) => set({ beneath })}
        options={(['board-on-bench', 'open', 'insulated'] as const).map((value) => ({
          value,
          label: t(`place-beneath-${value}`),
        }))}
      />
    </>
  )
}

function HourFields({ resin, set }: Props) {
  const { waking } = resin
  return (
    <div className="field-pairs">
      <OptionalNumberField
        label={t('place-awake-from')}
        value={waking.fromHour}
        limits={HOUR}
        onChange={(fromHour) => fromHour !== null && set({ waking: { ...waking, fromHour } })}
      />
      <OptionalNumberField
        label={t('place-awake-to')}
        value={waking.toHour}
        limits={HOUR}
        onChange={(toHour) => toHour !== null && set({ waking: { ...waking, toHour } })}
      />
      <NumberField
        label={t('place-handling')}
        value={resin.handlingMinutes}
        limits={{ least: 1, greatest: 1440 }}
        suffix={t('unit-minutes')}
        onChange={(handlingMinutes) => set({ handlingMinutes })}
      />
      <OptionalNumberField
        label={t('place-bucket')}
        value={resin.bucketKg}
        limits={{ least: 0.01, greatest: 1000 }}
        suffix={t('unit-kg')}
        placeholder={t('place-no-limit')}
        onChange={(bucketKg) => set({ bucketKg })}
      />
    </div>
  )
}

type Dye = NonNullable<Resin['dye']>
type DyeKind = Dye['kind'] | 'none'

const STARTING_DYES = {
  none: null,
  grams: { kind: 'grams', gramsPerLitre: 2 },
  drops: { kind: 'drops', dropsPerLitre: 10, gramsPerDrop: 0.04 },
} as const satisfies Record<DyeKind, Dye | null>

function DyeFields({ resin: { dye }, set }: Props) {
  return (
    <>
      <ChoiceGroup<DyeKind>
        label={t('dye-title')}
        value={dye?.kind ?? 'none'}
        onChange={(kind) => set({ dye: STARTING_DYES[kind] })}
        options={(['none', 'grams', 'drops'] as const).map((value) => ({ value, label: t(`dye-${value}`) }))}
      />
      {dye?.kind === 'grams' && (
        <OptionalNumberField
          label={t('dye-grams-per-litre')}
          value={dye.gramsPerLitre}
          limits={{ least: 0.01, greatest: 500 }}
          onChange={(gramsPerLitre) => gramsPerLitre !== null && set({ dye: { ...dye, gramsPerLitre } })}
        />
      )}
      {dye?.kind === 'drops' && (
        <div className="field-pairs">
          <OptionalNumberField
            label={t('dye-drops-per-litre')}
            value={dye.dropsPerLitre}
            limits={{ least: 0.1, greatest: 5000 }}
            onChange={(dropsPerLitre) => dropsPerLitre !== null && set({ dye: { ...dye, dropsPerLitre } })}
          />
          <OptionalNumberField
            label={t('dye-grams-per-drop')}
            value={dye.gramsPerDrop}
            limits={{ least: 0.001, greatest: 1 }}
            onChange={(gramsPerDrop) => gramsPerDrop !== null && set({ dye: { ...dye, gramsPerDrop } })}
          />
        </div>
      )}
    </>
  )
}

/** Where, when and with what it is poured. */
export function PlacePart({ option }: { readonly option: Option }) {
  const { resin } = option
  const set = (changes: Partial<Resin>) => changeResin(option.id, changes)
  return (
    <PanelPart title={t('place-title')}>
      <RoomFields resin={resin} set={set} />
      <AirFields resin={resin} set={set} />
      <HourFields resin={resin} set={set} />
      <MoreInputs title={t('dye-title')} isOpen={resin.dye !== null}>
        <DyeFields resin={resin} set={set} />
      </MoreInputs>
      <TemperatureField
        label={t('place-resin')}
        celsius={resin.resinC}
        placeholder={t('place-as-room')}
        onEmpty={() => set({ resinC: null })}
        onChange={(resinC) => set({ resinC })}
      />
      <CheckField
        label={t('place-beyond')}
        checked={resin.beyondSheet}
        onChange={(beyondSheet) => set({ beyondSheet })}
      />
      {resin.beyondSheet && <p className="example-warning">{t('place-beyond-note')}</p>}
    </PanelPart>
  )
}
