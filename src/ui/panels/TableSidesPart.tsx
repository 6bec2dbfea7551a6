import type { Option, TableSideName } from '../../core/plan'
import { setTableSide } from '../../state/commands'
import { run } from '../../state/run'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { LengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'
import { useIssueAt } from './useIssues'

type Finish = Option['table']['sides'][TableSideName]['finish']

/** The long sides first: they are the ones where the live edge is. */
const SIDES: readonly TableSideName[] = ['far', 'near', 'start', 'end']
const FINISHES: readonly Finish[] = ['sawn', 'filled', 'live']
const OVERSIZE_LIMITS = { leastMm: 0, greatestMm: 200 }

function SideRow({ option, side }: { readonly option: Option; readonly side: TableSideName }) {
  const issue = useIssueAt()('options', option.id, 'table', 'sides', side)
  const { finish, oversizeMm } = option.table.sides[side]
  const name = t(`side-name-${side}`)
  return (
    <div className="side-row" data-place={placeName('sides', side)}>
      <ChoiceGroup<Finish>
        label={name}
        value={finish}
        onChange={(chosen) => run(setTableSide, { optionId: option.id, side, finish: chosen })}
        options={FINISHES.map((value) => ({ value, label: t(`finish-${value}`) }))}
      />
      <LengthField
        label={t('table-oversize')}
        valueMm={oversizeMm}
        limits={OVERSIZE_LIMITS}
        disabled={finish === 'live'}
        onChange={(mm) => run(setTableSide, { optionId: option.id, side, oversizeMm: mm })}
      />
      {issue !== undefined && <p className="field-problem">{issue}</p>}
    </div>
  )
}

/** How each side of the top is finished, and how much is left on it for the last trim. */
export function TableSidesPart({ option }: { readonly option: Option }) {
  return (
    <PanelPart title={t('table-sides')} note={t('table-sides-note')}>
      {SIDES.map((side) => (
        <SideRow key={side} option={option} side={side} />
      ))}
    </PanelPart>
  )
}
