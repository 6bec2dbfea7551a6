import type { PourResult } from '../../../core/plan'
import type { PourHeat, ReadingTable } from '../../../core/resin'
import { t } from '../../text/t'
import { bandText, type Words } from './layerFigures'

interface TableProps {
  readonly caption: string
  readonly heads: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

function PlainTable({ caption, heads, rows }: TableProps) {
  return (
    <div className="table-scroll">
      <table>
        <caption className="unseen">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, k) =>
                k === 0 ? (
                  <th key={heads[k]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={heads[k]}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

const TABLE_ROWS = 24

/** The chart in figures. */
export function ChartTable({ heat, words }: { readonly heat: PourHeat; readonly words: Words }) {
  const { hours, coreC, surfaceC, coreLeastC, coreGreatestC } = heat.chart
  const { format, when } = words
  const every = Math.max(1, Math.floor(hours.length / TABLE_ROWS))
  const rows = hours.flatMap((hour, k) =>
    k % every === 0
      ? [
          [
            when(Math.round(hour)),
            format.temperature(coreC[k] ?? 0),
            bandText([coreLeastC[k] ?? 0, coreGreatestC[k] ?? 0], format.temperature),
            format.temperature(surfaceC[k] ?? 0),
          ],
        ]
      : [],
  )
  const heads = [t('heat-table-when'), t('heat-core'), t('heat-table-band'), t('heat-surface')]
  return <PlainTable caption={t('heat-table')} heads={heads} rows={rows} />
}

export function ReadingsTable({
  readings,
  words: { format },
}: {
  readonly readings: ReadingTable
  readonly words: Words
}) {
  const rows = readings.actions.map(({ action, surfaceC, coreC, leadHours }) => [
    format.temperature(surfaceC),
    t('pour-about-plain', { value: format.temperature(coreC) }),
    t('pour-about-plain', { value: format.hours(leadHours) }),
    t(`heat-do-${action}`),
  ])
  const heads = [t('heat-reading'), t('heat-reading-core'), t('heat-reading-lead'), t('heat-reading-do')]
  return <PlainTable caption={t('heat-readings-title')} heads={heads} rows={rows} />
}

export function RoomsTable({
  rooms,
  words: { format },
}: {
  readonly rooms: PourResult['rooms']
  readonly words: Words
}) {
  const depth = (mm: number): string => (mm === Infinity ? t('heat-any-depth') : format.length(mm))
  const rows = rooms.map(({ roomC, still, fans }) => [
    format.temperature(roomC),
    `${depth(still.depthMm)} (${bandText(still.bandMm, depth)})`,
    `${depth(fans.depthMm)} (${bandText(fans.bandMm, depth)})`,
  ])
  const heads = [t('heat-rooms-room'), t('heat-rooms-still'), t('heat-rooms-fans')]
  return <PlainTable caption={t('heat-rooms-title')} heads={heads} rows={rows} />
}

export function BucketsTable({
  buckets,
  words: { format },
}: {
  readonly buckets: PourResult['buckets']
  readonly words: Words
}) {
  const after = (hours: number | null): string => (hours === null ? t('pour-never') : format.hours(hours))
  const rows = buckets.map(({ massKg, heat }) => [
    format.mass(massKg),
    after(heat.plus5Hours),
    after(heat.plus10Hours),
    after(heat.reaches60Hours),
  ])
  const heads = [t('heat-bucket'), t('heat-bucket-plus5'), t('heat-bucket-plus10'), t('heat-bucket-60')]
  return <PlainTable caption={t('heat-buckets-title')} heads={heads} rows={rows} />
}
