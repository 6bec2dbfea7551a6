import type { BuildResult, Option, Slab } from '../../../core/plan'
import { ringBounds } from '../../../core/geometry'
import { LengthField, OptionalLengthField } from '../../fields/LengthField'
import { readyValue } from '../../readyValue'
import { type Format, useFormat } from '../../text/useFormat'
import { usePlanResult } from '../../usePlanResult'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeWood, useBuildSlab } from './useBuild'

type Reading = Slab['wood']['heights'][number]

/** In from the ends and edges, so that the straightedge lies on wood. */
const IN_FROM_ENDS = 0.05
const IN_FROM_EDGES = 0.15

const FIVE = [
  ['flat-corner-start-far', IN_FROM_ENDS, IN_FROM_EDGES],
  ['flat-corner-start-near', IN_FROM_ENDS, 1 - IN_FROM_EDGES],
  ['flat-corner-middle', 0.5, 0.5],
  ['flat-corner-end-far', 1 - IN_FROM_ENDS, IN_FROM_EDGES],
  ['flat-corner-end-near', 1 - IN_FROM_ENDS, 1 - IN_FROM_EDGES],
] as const

interface Place {
  readonly xMm: number
  readonly yMm: number
  readonly name: string
}

/** Corners and middle of a slab; empty while its shape is not known. */
function usePlaces(slab: Slab): readonly Place[] {
  const shape = readyValue(usePlanResult().slabs.get(slab.id)?.shape)
  if (shape === null) return []
  const { minX, minY, maxX, maxY } = ringBounds(shape.outline)
  return FIVE.map(([name, along, across]) => ({
    name: bt(name),
    xMm: Math.round(minX + along * (maxX - minX)),
    yMm: Math.round(minY + across * (maxY - minY)),
  }))
}

const placeOf = (reading: Reading, places: readonly Place[], format: Format): string =>
  places.find(({ xMm, yMm }) => xMm === reading.xMm && yMm === reading.yMm)?.name ??
  bt('flat-place', { along: format.length(reading.xMm), across: format.length(reading.yMm) })

interface RowsProps {
  readonly slab: Slab
  readonly places: readonly Place[]
}

function Readings({ slab, places }: RowsProps) {
  const format = useFormat()
  const { heights } = slab.wood
  const setOne = (reading: Reading, changes: Partial<Reading>) =>
    changeWood(slab.id, {
      heights: heights.map((other) => (other === reading ? { ...reading, ...changes } : other)),
    })
  if (heights.length === 0) return null
  return (
    <ul className="cards">
      {heights.map((reading, at) => {
        const place = placeOf(reading, places, format)
        return (
          // Readings have no names: two may lie at one place.
          <li key={`${at}/${reading.xMm}/${reading.yMm}`} className="height-row">
            <span className="height-place">{place}</span>
            <LengthField
              label={`${bt('flat-top')}, ${place}`}
              labelHidden
              valueMm={reading.topMm}
              limits={{ leastMm: -2000, greatestMm: 2000 }}
              onChange={(topMm) => setOne(reading, { topMm })}
            />
            <OptionalLengthField
              label={`${bt('flat-thickness')}, ${place}`}
              labelHidden
              valueMm={reading.thicknessMm}
              limits={{ leastMm: 1, greatestMm: 1000 }}
              placeholder={bt('flat-as-slab')}
              onChange={(thicknessMm) => setOne(reading, { thicknessMm })}
            />
            <button
              type="button"
              className="button button-small"
              aria-label={`${bt('remove')}: ${place}`}
              onClick={() => changeWood(slab.id, { heights: heights.filter((other) => other !== reading) })}
            >
              ✕
            </button>
          </li>
        )
      })}
    </ul>
  )
}

function resultRows(flattening: BuildResult['flattening'], format: Format) {
  const { whole, pieces } = flattening
  if (whole === null) return []
  const fine = (mm: number) => format.length(mm, { precision: 0.1 })
  const over = (mm: number) =>
    mm < 0 ? bt('flat-short', { short: fine(-mm) }) : bt('flat-over', { over: fine(mm) })
  const work = ({ greatestMm, passes }: typeof whole.top) =>
    bt('flat-passes', { most: fine(greatestMm), passes })
  return [
    {
      name: bt('flat-whole'),
      figure: `${fine(whole.flatMm)} ${over(whole.overWantedMm)}`,
      isTotal: true,
    },
    { name: bt('flat-top-passes'), figure: work(whole.top) },
    { name: bt('flat-bottom-passes'), figure: work(whole.bottom) },
    ...pieces.flatMap((piece) =>
      piece.flattening === null
        ? []
        : [
            {
              name: bt('flat-piece', { name: piece.name }),
              figure: `${fine(piece.flattening.flatMm)} ${over(piece.flattening.overWantedMm)}`,
            },
          ],
    ),
  ]
}

interface Props {
  readonly option: Option
  readonly flattening: BuildResult['flattening'] | null
}

/** Heights of the slab as it lies, and what is left of it once it is flat. */
export function FlattenPart({ flattening }: Props) {
  const slab = useBuildSlab()
  return slab === null ? null : <FlattenSlab slab={slab} flattening={flattening} />
}

function FlattenSlab({ slab, flattening }: { readonly slab: Slab } & Pick<Props, 'flattening'>) {
  const format = useFormat()
  const places = usePlaces(slab)
  const { heights, passMm } = slab.wood
  const missing = places.filter(
    ({ xMm, yMm }) => !heights.some((reading) => reading.xMm === xMm && reading.yMm === yMm),
  )
  const rows = flattening === null ? [] : resultRows(flattening, format)
  return (
    <PanelPart title={bt('flat-title')} note={bt('flat-note')}>
      {heights.length > 0 && (
        <div className="height-row height-head" aria-hidden="true">
          <span>{bt('flat-column-place')}</span>
          <span>{bt('flat-top')}</span>
          <span>{bt('flat-thickness')}</span>
        </div>
      )}
      <Readings slab={slab} places={places} />
      {missing.length > 0 && (
        <div className="button-row">
          <button
            type="button"
            className="button button-small"
            onClick={() =>
              changeWood(slab.id, {
                heights: [
                  ...heights,
                  ...missing.map(({ xMm, yMm }) => ({ xMm, yMm, topMm: 0, thicknessMm: null })),
                ],
              })
            }
          >
            {bt('flat-five')}
          </button>
        </div>
      )}
      <LengthField
        label={bt('flat-pass')}
        valueMm={passMm}
        limits={{ leastMm: 0.1, greatestMm: 20 }}
        onChange={(pass) => changeWood(slab.id, { passMm: pass })}
      />
      {rows.length > 0 && (
        <>
          <Figures rows={rows} />
          <p className="note">{bt('flat-between')}</p>
        </>
      )}
    </PanelPart>
  )
}
