import { useStore } from 'zustand'
import { ringCentroid } from '../../core/geometry'
import type { CoverageResult, Option } from '../../core/plan'
import { movePlacement, removePlacement, renamePiece } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { turnedOverPose } from '../canvas/poseEdits'
import { CheckField } from '../fields/CheckField'
import { TextField } from '../fields/TextField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { PoseFields } from './PoseFields'
import { useIssueAt } from './useIssues'

type Placement = Option['placements'][number]

interface Props {
  readonly option: Option
  readonly coverage: CoverageResult | null
}

function PlacementCard({ option, coverage, placement }: Props & { readonly placement: Placement }) {
  const format = useFormat()
  const issue = useIssueAt()('options', option.id, 'placements', placement.id)
  const isSelected = useStore(
    sessionStore,
    ({ selection }) => selection?.kind === 'placement' && selection.placementId === placement.id,
  )
  const piece = option.pieces.find(({ id }) => id === placement.pieceId)
  const laid = coverage?.placed.find(({ placementId }) => placementId === placement.id)
  const middle = laid === undefined ? ([0, 0] as const) : ringCentroid(laid.whole.outer)
  const at = { optionId: option.id, placementId: placement.id }
  const name = piece?.name ?? ''
  return (
    <li
      className="card"
      data-place={placeName('placements', placement.id)}
      data-selected={isSelected ? '' : undefined}
    >
      <div className="row-head">
        <TextField
          label={t('placement-name')}
          needed
          value={name}
          onChange={(named) =>
            run(renamePiece, { optionId: option.id, pieceId: placement.pieceId, name: named })
          }
        />
        <button type="button" className="button button-small" onClick={() => run(removePlacement, at)}>
          {t('placement-remove')}
          <span className="unseen"> {name}</span>
        </button>
      </div>
      <PoseFields
        pose={placement.pose}
        at={middle}
        middle={middle}
        xLabel={t('placement-x')}
        yLabel={t('placement-y')}
        onChange={(pose) => run(movePlacement, { ...at, pose })}
      />
      <CheckField
        label={t('placement-turned-over')}
        checked={placement.pose.turnedOver}
        onChange={() => run(movePlacement, { ...at, pose: turnedOverPose(placement.pose, middle) })}
      />
      {laid !== undefined && (
        <p className="note">{t('placement-fills', { area: format.area(laid.areaInBlankMm2) })}</p>
      )}
      {issue !== undefined && <p className="field-problem">{issue}</p>}
    </li>
  )
}

/** Offcuts that lie in gaps: place, angle, face. */
export function PlacementList(props: Props) {
  return (
    <ul className="cards">
      {props.option.placements.map((placement) => (
        <PlacementCard key={placement.id} {...props} placement={placement} />
      ))}
    </ul>
  )
}
