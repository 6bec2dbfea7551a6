import { useState } from 'react'
import { GREATEST_LENGTH_MM, type Slab } from '../../core/plan'
import { setStations } from '../../state/commands'
import { run } from '../../state/run'
import { LengthField, OptionalLengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'

type Station = Extract<Slab['capture'], { kind: 'stations' }>['stations'][number]
type Typed = { readonly [K in keyof Station]: Station[K] | null }

/** A datum beside a narrow end may lie outside the slab: then an edge is on the other side of it, minus. */
const LIMITS = {
  alongMm: { leastMm: 0, greatestMm: GREATEST_LENGTH_MM },
  leftMm: { leastMm: -GREATEST_LENGTH_MM, greatestMm: GREATEST_LENGTH_MM },
  rightMm: { leastMm: -GREATEST_LENGTH_MM, greatestMm: GREATEST_LENGTH_MM },
} as const

const COLUMNS = ['alongMm', 'leftMm', 'rightMm'] as const
const LABELS = { alongMm: 'station-along', leftMm: 'station-left', rightMm: 'station-right' } as const
const NOTHING: Typed = { alongMm: null, leftMm: null, rightMm: null }

interface Props {
  readonly slabId: string
  readonly stations: readonly Station[]
}

/** In the order in which they lie, however they were typed. */
const inOrder = (stations: readonly Station[]): readonly Station[] =>
  stations.toSorted((a, b) => a.alongMm - b.alongMm)

function StationRow({ slabId, stations, place }: Props & { readonly place: number }) {
  const station = stations[place]
  if (station === undefined) return null
  const number = String(place + 1)
  const set = (after: readonly Station[]) => run(setStations, { slabId, stations: after })
  return (
    <tr data-place={placeName('stations', number)}>
      <th scope="row">{number}</th>
      {COLUMNS.map((column) => (
        <td key={column}>
          <LengthField
            label={t('station-field', { number, what: t(LABELS[column]) })}
            labelHidden
            valueMm={station[column]}
            limits={LIMITS[column]}
            onChange={(mm) => set(inOrder(stations.with(place, { ...station, [column]: mm })))}
          />
        </td>
      ))}
      <td className="number">
        <button
          type="button"
          className="button button-small"
          onClick={() => set(stations.filter((other) => other !== station))}
        >
          {t('remove')}
          <span className="unseen"> {t('station-name', { number })}</span>
        </button>
      </td>
    </tr>
  )
}

const whole = ({ alongMm, leftMm, rightMm }: Typed): Station | null =>
  alongMm === null || leftMm === null || rightMm === null ? null : { alongMm, leftMm, rightMm }

/** The next station: it joins the list once all three of its lengths are typed. */
function NextStation({ slabId, stations }: Props) {
  const [typed, setTyped] = useState<Typed>(NOTHING)
  const next = whole(typed)
  const add = () => {
    if (next === null) return
    run(setStations, { slabId, stations: inOrder([...stations, next]) })
    setTyped(NOTHING)
  }
  return (
    <div className="card">
      <strong>{t('station-next')}</strong>
      <div className="field-grid">
        {COLUMNS.map((column) => (
          <OptionalLengthField
            key={`${column}-${stations.length}`}
            label={t(LABELS[column])}
            valueMm={typed[column]}
            limits={LIMITS[column]}
            onChange={(mm) => setTyped((before) => ({ ...before, [column]: mm }))}
          />
        ))}
      </div>
      <div className="button-row">
        <button type="button" className="button button-main" disabled={next === null} onClick={add}>
          {t('station-add')}
        </button>
      </div>
    </div>
  )
}

/** The outline of a slab without a photo: at stations along a chalked datum, how far each edge is from it. */
export function StationsPart(props: Props) {
  const { stations } = props
  return (
    <PanelPart title={t('stations-title')} note={t('stations-note')}>
      {stations.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{t('station-column')}</th>
              {COLUMNS.map((column) => (
                <th scope="col" key={column}>
                  {t(LABELS[column])}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">{t('remove')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {stations.map((station, place) => (
              <StationRow key={station.alongMm} {...props} place={place} />
            ))}
          </tbody>
        </table>
      )}
      <NextStation {...props} />
    </PanelPart>
  )
}
