import { useId } from 'react'
import { GREATEST_LENGTH_MM, type Slab, type SlabScaleResult, type TapedDistanceCheck } from '../../core/plan'
import { setTapedDistance } from '../../state/commands'
import { newId } from '../../state/newId'
import { run } from '../../state/run'
import { OptionalLengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { PanelPart } from './PanelPart'
import { type TapedPair, tapedPairs } from './tapedPairs'
import { useIssueAt, useIssues } from './useIssues'

interface Props {
  readonly slab: Slab
  readonly scale: SlabScaleResult | null
}

const TAPE_LIMITS = { leastMm: 10, greatestMm: GREATEST_LENGTH_MM }

const wrongSign = (isWrong: boolean): '' | undefined => (isWrong ? '' : undefined)

function setTaped(slabId: string, pair: TapedPair, lengthMm: number | null): void {
  if (pair.taped === null && lengthMm === null) return
  const distanceId = pair.taped?.id ?? newId()
  run(setTapedDistance, { slabId, distanceId, markIds: [pair.from.id, pair.to.id], lengthMm })
}

/** What the photo says to a taped distance. */
function CheckCells({ check }: { readonly check: TapedDistanceCheck | undefined }) {
  const format = useFormat()
  const found = check && format.length(check.foundMm, { precision: 0.1 })
  const off = check && format.length(check.foundMm - check.statedMm, { precision: 0.1, signed: true })
  return (
    <>
      <td className="number">
        {found ?? ''}
        {check !== undefined && <span className="plus-minus"> {format.plusMinus(check.sdMm, 'length')}</span>}
      </td>
      <td className="number">{off ?? ''}</td>
    </>
  )
}

/** Whether a distance is one of those of which one must be wrong; the photo alone may not tell which. */
function useIsSuspect({ from, to }: TapedPair): boolean {
  const names = useIssues().flatMap(({ code, values }) =>
    code === 'distances-disagree' ? String(values.distanceNames).split(', ') : [],
  )
  return names.includes(`${from.name}–${to.name}`) || names.includes(`${to.name}–${from.name}`)
}

function DistanceRow({ slab, scale, pair }: Props & { readonly pair: TapedPair }) {
  const noteId = useId()
  const issueAt = useIssueAt()
  const { taped } = pair
  const issue = taped === null ? undefined : issueAt('slabs', slab.id, 'tapedDistances', taped.id)
  const isSuspect = useIsSuspect(pair)
  const names = `${pair.from.name} – ${pair.to.name}`
  return (
    <>
      <tr
        data-place={placeName('tapedDistances', taped?.id ?? '')}
        data-wrong={wrongSign(isSuspect || issue !== undefined)}
      >
        <th scope="row">{names}</th>
        <td>
          <OptionalLengthField
            label={t('size-taped', { names })}
            labelHidden
            valueMm={taped?.lengthMm ?? null}
            limits={TAPE_LIMITS}
            noteId={issue === undefined ? undefined : noteId}
            placeholder={t('size-not-taped')}
            onChange={(lengthMm) => setTaped(slab.id, pair, lengthMm)}
          />
        </td>
        <CheckCells check={scale?.distanceChecks.find(({ distanceId }) => distanceId === taped?.id)} />
      </tr>
      {issue !== undefined && (
        <tr data-wrong="">
          <td colSpan={4} id={noteId} className="row-problem">
            {issue}
          </td>
        </tr>
      )}
    </>
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
