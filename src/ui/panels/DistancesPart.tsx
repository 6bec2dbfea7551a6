import { GREATEST_LENGTH_MM, type Slab, type SlabScaleResult } from '../../core/plan'
import { setTapedDistance } from '../../state/commands'
import { newId } from '../../state/newId'
import { run } from '../../state/run'
import { OptionalLengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { PanelPart } from './PanelPart'
import { type TapedPair, tapedPairs } from './tapedPairs'
import { useIssueAt } from './useIssues'

interface Props {
  readonly slab: Slab
  readonly scale: SlabScaleResult | null
}

const TAPE_LIMITS = { leastMm: 10, greatestMm: GREATEST_LENGTH_MM }

function setTaped(slabId: string, pair: TapedPair, lengthMm: number | null): void {
  if (pair.taped === null && lengthMm === null) return
  const distanceId = pair.taped?.id ?? newId()
  run(setTapedDistance, { slabId, distanceId, markIds: [pair.from.id, pair.to.id], lengthMm })
}

function DistanceRow({ slab, scale, pair }: Props & { readonly pair: TapedPair }) {
  const format = useFormat()
  const issueAt = useIssueAt()
  const id = pair.taped?.id ?? ''
  const check = scale?.distanceChecks.find(({ distanceId }) => distanceId === id)
  const issue = id === '' ? undefined : issueAt('slabs', slab.id, 'tapedDistances', id)
  const names = `${pair.from.name} – ${pair.to.name}`
  return (
    <tr data-place={placeName('tapedDistances', id)} data-wrong={issue === undefined ? undefined : ''}>
      <th scope="row">{names}</th>
      <td>
        <OptionalLengthField
          label={t('size-taped', { names })}
          labelHidden
          valueMm={pair.taped?.lengthMm ?? null}
          limits={TAPE_LIMITS}
          issue={issue}
          placeholder={t('size-not-taped')}
          onChange={(lengthMm) => setTaped(slab.id, pair, lengthMm)}
        />
      </td>
      <td className="number">
        {check === undefined ? '' : format.length(check.foundMm, { precision: 0.1 })}
      </td>
      <td className="number">
        {check === undefined
          ? ''
          : format.length(check.foundMm - check.statedMm, { precision: 0.1, signed: true })}
      </td>
    </tr>
  )
}

/** Taped distances between all pairs of marks, with what the photo says to each. */
export function DistancesPart({ slab, scale }: Props) {
  const pairs = tapedPairs(slab)
  if (pairs.length === 0) return null
  return (
    <PanelPart title={t('size-distances')} note={t('size-distances-note')}>
      <table className="distances">
        <thead>
          <tr>
            <th scope="col">{t('size-column-between')}</th>
            <th scope="col">{t('size-column-taped')}</th>
            <th scope="col" className="number">
              {t('size-column-found')}
            </th>
            <th scope="col" className="number">
              {t('size-column-difference')}
            </th>
          </tr>
        </thead>
        <tbody>
          {pairs.map((pair) => (
            <DistanceRow key={`${pair.from.id} ${pair.to.id}`} slab={slab} scale={scale} pair={pair} />
          ))}
        </tbody>
      </table>
    </PanelPart>
  )
}
