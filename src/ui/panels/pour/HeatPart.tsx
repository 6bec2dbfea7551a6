import type { Option, PourResult } from '../../../core/plan'
import type { PourHeat } from '../../../core/resin'
import { RangeField } from '../../fields/RangeField'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { PanelPart } from '../PanelPart'
import { HeatLines } from './HeatLines'
import { HeatMap } from './HeatMap'
import { BucketsTable, ChartTable, ReadingsTable, RoomsTable } from './HeatTables'
import type { Words } from './layerFigures'
import { MoreInputs } from './MoreInputs'
import { changeResin, hourWords, tryResin } from './usePour'

type Room = Option['resin']['room']

const roomOf = (room: Room): number => (room.kind === 'steady' ? room.roomC : room.meanC)
const withRoom = (room: Room, celsius: number): Room =>
  room.kind === 'steady' ? { ...room, roomC: celsius } : { ...room, meanC: celsius }

/** The room's temperature by a handle; the chart follows while it moves. */
function RoomSlider({ option }: { readonly option: Option }) {
  const format = useFormat()
  const { room } = option.resin
  return (
    <RangeField
      label={t('heat-room')}
      text={format.temperature(roomOf(room))}
      value={roomOf(room)}
      least={10}
      greatest={40}
      step={1}
      onMove={(celsius) => tryResin(option.id, { room: withRoom(room, celsius) })}
      onSettle={(celsius) => changeResin(option.id, { room: withRoom(room, celsius) })}
    />
  )
}

function hottestMoment({ chart }: PourHeat): { readonly coreC: number; readonly hour: number } {
  const coreC = Math.max(...chart.coreC)
  return { coreC, hour: chart.hours[chart.coreC.indexOf(coreC)] ?? 0 }
}

function Chart({ heat, words }: { readonly heat: PourHeat; readonly words: Words }) {
  const { format, when } = words
  const { coreC, hour } = hottestMoment(heat)
  const label = t('heat-chart-label', { core: format.temperature(coreC), hour: when(hour) })
  return (
    <>
      <HeatLines heat={heat} label={label} />
      <HeatMap heat={heat} />
      <MoreInputs title={t('heat-table')}>
        <ChartTable heat={heat} words={words} />
      </MoreInputs>
    </>
  )
}

function Readings({ heat, words }: { readonly heat: PourHeat; readonly words: Words }) {
  if (heat.readings === null) return null
  const { limitSurfaceC, coreLimitC } = heat.readings
  const { temperature } = words.format
  return (
    <>
      <h4>{t('heat-readings-title')}</h4>
      <p className="note">
        {t('heat-readings-note', { surface: temperature(limitSurfaceC), core: temperature(coreLimitC) })}
      </p>
      <ReadingsTable readings={heat.readings} words={words} />
    </>
  )
}

interface Props {
  readonly option: Option
  readonly result: PourResult
}

/** How hot it gets, what to read and do, and what the room does to it. */
export function HeatPart({ option, result }: Props) {
  const words = { format: useFormat(), when: hourWords(option.resin) }
  return (
    <PanelPart title={t('heat-title')} note={t('heat-note')}>
      <RoomSlider option={option} />
      {result.heat !== null && (
        <>
          <Chart heat={result.heat} words={words} />
          <Readings heat={result.heat} words={words} />
        </>
      )}
      {result.rooms.length > 0 && (
        <MoreInputs title={t('heat-rooms-title')}>
          <p className="note">{t('heat-rooms-note')}</p>
          <RoomsTable rooms={result.rooms} words={words} />
        </MoreInputs>
      )}
      {result.buckets.length > 0 && (
        <MoreInputs title={t('heat-buckets-title')}>
          <BucketsTable buckets={result.buckets} words={words} />
        </MoreInputs>
      )}
    </PanelPart>
  )
}
