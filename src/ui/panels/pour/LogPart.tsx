import type { Option, PourResult } from '../../../core/plan'
import { newId } from '../../../state/newId'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { LengthField, OptionalLengthField } from '../../fields/LengthField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { TemperatureField } from '../../fields/TemperatureField'
import { TextField } from '../../fields/TextField'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { changeResin } from './usePour'

type LoggedPour = Option['resin']['log'][number]
type Against = NonNullable<PourResult['refit']>['pours'][number]

const LENGTHS = { leastMm: 0, greatestMm: 20_000 }

interface EntryProps {
  readonly pour: LoggedPour
  readonly set: (changes: Partial<LoggedPour>) => void
  readonly onRemove: () => void
  readonly against: Against | undefined
}

function EntryFields({ pour, set }: EntryProps) {
  return (
    <>
      <TextField label={t('log-name')} value={pour.name} onChange={(name) => set({ name })} />
      <div className="field-pairs">
        <LengthField
          label={t('log-depth')}
          valueMm={pour.depthMm}
          limits={LENGTHS}
          onChange={(depthMm) => set({ depthMm })}
        />
        <OptionalLengthField
          label={t('log-width')}
          valueMm={pour.widthMm}
          limits={LENGTHS}
          placeholder={t('log-width-wide')}
          onChange={(widthMm) => set({ widthMm })}
        />
        <TemperatureField label={t('log-room')} celsius={pour.roomC} onChange={(roomC) => set({ roomC })} />
        <TemperatureField
          label={t('log-resin')}
          celsius={pour.resinC}
          onChange={(resinC) => set({ resinC })}
        />
        <TemperatureField
          label={t('log-surface')}
          celsius={pour.surfacePeakC}
          greatestC={300}
          onChange={(surfacePeakC) => set({ surfacePeakC })}
        />
        <OptionalNumberField
          label={t('log-hours')}
          value={pour.peakHours}
          limits={{ least: 0, greatest: 1000 }}
          suffix={t('unit-hours')}
          placeholder={t('log-hours-not-seen')}
          onChange={(peakHours) => set({ peakHours })}
        />
      </div>
      <ChoiceGroup<LoggedPour['air']>
        label={t('place-air')}
        value={pour.air}
        onChange={(air) => set({ air })}
        options={[
          { value: 'still', label: t('place-air-still') },
          { value: 'fans', label: t('place-air-fans') },
        ]}
      />
    </>
  )
}

/** What the gun read, against the sheet's fit and the maker's own. */
function AgainstRows({ against }: { readonly against: Against }) {
  const { temperature, hours } = useFormat()
  const both = (celsius: number, after: number | null): string =>
    after === null ? temperature(celsius) : `${temperature(celsius)}, ${hours(after)}`
  const fitted =
    against.afterC === null
      ? []
      : [{ name: t('log-fitted'), figure: both(against.afterC, against.afterHours) }]
  return (
    <Figures
      rows={[
        { name: t('log-found'), figure: both(against.loggedC, against.loggedHours) },
        { name: t('log-planned'), figure: both(against.beforeC, against.beforeHours) },
        ...fitted,
      ]}
    />
  )
}

function Entry(props: EntryProps) {
  const { pour, onRemove, against } = props
  return (
    <li className="card">
      <div className="row-head">
        <strong>{pour.name}</strong>
        <button type="button" className="button button-small" onClick={onRemove}>
          {t('remove')}
          <span className="unseen"> {pour.name}</span>
        </button>
      </div>
      <EntryFields {...props} />
      {against !== undefined && <AgainstRows against={against} />}
    </li>
  )
}

/** The next entry starts as the plan has it: the maker changes what was different. */
function startingEntry({ resin }: Option, result: PourResult, number: number): LoggedPour {
  const roomC = resin.room.kind === 'steady' ? resin.room.roomC : resin.room.meanC
  const layer = result.heat?.layers[0]
  const round = (value: number) => Math.round(value)
  return {
    id: newId(),
    name: t('log-new-name', { number }),
    depthMm: round(layer?.depthMm ?? resin.sheet.deepestLayerMm),
    widthMm: null,
    roomC,
    resinC: resin.resinC ?? roomC,
    air: resin.air,
    surfacePeakC: round(layer?.surfacePeakC ?? resin.sheet.surfacePeakLimitC),
    peakHours: null,
  }
}

/** The maker's own pours, and how the model stands up to them. */
export function LogPart({ option, result }: { readonly option: Option; readonly result: PourResult }) {
  const { log } = option.resin
  const set = (next: Option['resin']['log']) => changeResin(option.id, { log: next })
  const againstOf = (pour: LoggedPour) => result.refit?.pours.find(({ name }) => name === pour.name)
  return (
    <PanelPart title={t('log-title')} note={t('log-note')}>
      {(result.refit?.fit ?? null) !== null && <p>{t('log-is-fitted')}</p>}
      <ul className="cards">
        {log.map((pour) => (
          <Entry
            key={pour.id}
            pour={pour}
            set={(changes) => set(log.map((other) => (other === pour ? { ...pour, ...changes } : other)))}
            onRemove={() => set(log.filter((other) => other !== pour))}
            against={againstOf(pour)}
          />
        ))}
      </ul>
      <button
        type="button"
        className="button button-small"
        onClick={() => set([...log, startingEntry(option, result, log.length + 1)])}
      >
        {t('log-add')}
      </button>
    </PanelPart>
  )
}
