import { useStore } from 'zustand'
import { acuteAngle } from '../../core/cuts'
import type { Option, PiecesResult, SetOutCut } from '../../core/plan'
import { moveCutEarlier, removeLineCut, setLineCut } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { placeName } from '../stages/goToStage'
import { offsetText } from '../text/offsetText'
import { t } from '../text/t'
import { type Format, useFormat } from '../text/useFormat'

interface CutProps {
  readonly option: Option
  readonly cut: SetOutCut
}

function Stations({ cut }: { readonly cut: SetOutCut }) {
  const format = useFormat()
  const ends = [
    { name: t('cut-from'), at: cut.from },
    { name: t('cut-to'), at: cut.to },
  ]
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{t('cut-column-point')}</th>
          <th scope="col" className="number">
            {t('cut-column-along')}
          </th>
          <th scope="col" className="number">
            {t('cut-column-off')}
          </th>
        </tr>
      </thead>
      <tbody>
        {ends.map(({ name, at }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="number">{format.length(at.alongMm)}</td>
            <td className="number">{offsetText(at.offsetMm, format)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** The one taped length that must agree: from a mark, or between the cut's own ends. */
function checkText({ check }: SetOutCut, format: Format): string {
  const distance = format.length(check.distanceMm)
  if (check.fromMark === null) return t('cut-check-own', { distance })
  return t('cut-check', { from: check.fromMark, end: t(`cut-${check.toPoint}`), distance })
}

/** What a line of its own can have done to it; the table's sides follow the table. */
function LineActions({ option, cutId }: { readonly option: Option; readonly cutId: string }) {
  const line = option.cuts.find(({ id }) => id === cutId)
  if (line?.kind !== 'line') return null
  const at = { optionId: option.id, cutId }
  const wasteSide = line.wasteSide === 'left' ? 'right' : 'left'
  return (
    <div className="button-row">
      <button
        type="button"
        className="button button-small"
        onClick={() => run(setLineCut, { ...at, changes: { wasteSide } })}
      >
        {t('cut-other-waste')}
      </button>
      <button type="button" className="button button-small" onClick={() => run(removeLineCut, at)}>
        {t('cut-remove')}
      </button>
    </div>
  )
}

function CutCard({ option, cut }: CutProps) {
  const format = useFormat()
  const isSelected = useStore(
    sessionStore,
    ({ selection }) => selection?.kind === 'cut' && selection.cutId === cut.cutId,
  )
  const name = cut.side === null ? t('cut-own-line') : t(`cut-at-${cut.side}`)
  return (
    <li
      className="card"
      data-place={placeName('cuts', cut.cutId)}
      data-selected={isSelected ? '' : undefined}
    >
      <div className="row-head">
        <span className="cut-number">
          <span className="unseen">{t('cut')} </span>
          {cut.number}
        </span>
        <strong className="cut-name">{name}</strong>
        <button
          type="button"
          className="button button-small"
          disabled={cut.number === 1}
          onClick={() => run(moveCutEarlier, { optionId: option.id, cutId: cut.cutId })}
        >
          {t('cut-earlier')}
          <span className="unseen"> {name}</span>
        </button>
      </div>
      <Stations cut={cut} />
      <p className="note">
        {checkText(cut, format)}{' '}
        {t('cut-facts', {
          length: format.length(cut.lengthMm),
          angle: format.angle(acuteAngle(cut.angleToDatumRad)),
          waste: t(`cut-waste-${cut.wasteSide}`),
        })}
      </p>
      <LineActions option={option} cutId={cut.cutId} />
    </li>
  )
}

/** The cuts in order, set out as at the bench: two points by station and offset, and one distance to check. */
export function CutList({ option, pieces }: { readonly option: Option; readonly pieces: PiecesResult }) {
  return (
    <ol className="cards">
      {pieces.cuts.map((cut) => (
        <CutCard key={cut.cutId} option={option} cut={cut} />
      ))}
    </ol>
  )
}
