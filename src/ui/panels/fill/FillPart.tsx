import { useEffect, useState } from 'react'
import type { FillFinding } from '../../../core/layout'
import type { Option } from '../../../core/plan'
import { degreesToRadians, radiansToDegrees } from '../../../core/units'
import { idsForPieces, keepFill } from '../../../state/commands'
import { askFill, cancelFill } from '../../../state/fillDesk'
import { type FillEntry, forgetFill, showProposal } from '../../../state/fillStore'
import { newId } from '../../../state/newId'
import { run } from '../../../state/run'
import { setView } from '../../../state/sessionStore'
import { CheckField } from '../../fields/CheckField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { readyValue } from '../../readyValue'
import { useDescribeProblem } from '../../text/useDescribeProblem'
import { useFormat } from '../../text/useFormat'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from '../pour/MoreInputs'
import { ft } from './ft'
import { ProposalChoice } from './ProposalChoice'
import { type FillQuestion, type FillWishes, useFillEntry, useFillQuestion } from './useFill'

/** The grain's limit that makers begin with. Common practice, no source. */
const STARTING_WISHES: FillWishes = { mayTurnOver: true, grainWithinRad: degreesToRadians(25) }

interface LimitsProps {
  readonly wishes: FillWishes
  readonly leastJointMm: number
  readonly onChange: (wishes: FillWishes) => void
}

function Limits({ wishes, leastJointMm, onChange }: LimitsProps) {
  const format = useFormat()
  const { mayTurnOver, grainWithinRad } = wishes
  return (
    <MoreInputs title={ft('limits')}>
      <CheckField
        label={ft('may-turn-over')}
        checked={mayTurnOver}
        onChange={(may) => onChange({ ...wishes, mayTurnOver: may })}
      />
      <p className="note">{ft('turn-over-note')}</p>
      <OptionalNumberField
        label={ft('grain')}
        hint={ft('grain-hint')}
        placeholder={ft('grain-any')}
        value={grainWithinRad === null ? null : Math.round(radiansToDegrees(grainWithinRad) * 10) / 10}
        limits={{ least: 0, greatest: 90 }}
        suffix="°"
        onChange={(degrees) =>
          onChange({ ...wishes, grainWithinRad: degrees === null ? null : degreesToRadians(degrees) })
        }
      />
      <p className="note">{ft('joint', { joint: format.length(leastJointMm) })}</p>
    </MoreInputs>
  )
}

/** How far the search is, the way to stop it, and how it ended. */
function FillLine({ entry }: { readonly entry: FillEntry }) {
  const describe = useDescribeProblem()
  const { status, problem } = entry
  const isEmpty = (entry.finding?.proposals ?? []).length === 0
  if (status === 'running') {
    return (
      <div className="search-line" role="status">
        <label>
          {ft('searching')}
          <progress max={1} value={entry.fraction} />
        </label>
        <button type="button" className="button button-small" onClick={cancelFill}>
          {ft('cancel')}
        </button>
      </div>
    )
  }
  if (problem !== null) return <p role="status">{describe(problem)}</p>
  if (status === 'cancelled') return <p role="status">{ft(isEmpty ? 'stopped-none' : 'stopped')}</p>
  return isEmpty ? <p role="status">{ft('none')}</p> : null
}

interface FindingProps {
  readonly option: Option
  readonly question: FillQuestion
  readonly finding: FillFinding
}

function Proposals({ option, question, finding: { proposals } }: FindingProps) {
  const [place, setPlace] = useState(0)
  const chosen = proposals[Math.min(place, proposals.length - 1)]
  useEffect(() => {
    showProposal(chosen === undefined ? null : { optionId: option.id, pieces: chosen.pieces })
    return () => showProposal(null)
  }, [option.id, chosen])
  if (chosen === undefined) return null
  const keep = () => {
    cancelFill()
    const { pieces } = chosen
    const ids = Array.from({ length: idsForPieces(pieces) }, newId)
    run(keepFill, { optionId: option.id, slabId: question.slabId, pieces, ids })
    forgetFill()
    setView('table')
  }
  return (
    <>
      <ProposalChoice
        proposals={proposals}
        chosen={chosen}
        onChoose={setPlace}
        resin={readyValue(question.result.resin)}
      />
      <p className="note">{ft('seen')}</p>
      <div className="button-row">
        <button type="button" className="button button-main" onClick={keep}>
          {ft('keep')}
        </button>
      </div>
      <p className="note">{ft('caution')}</p>
    </>
  )
}

interface SearchProps {
  readonly option: Option
  readonly question: FillQuestion
}

function FillSearch({ option, question }: SearchProps) {
  const { entry, isOld } = useFillEntry(question)
  const [seed, setSeed] = useState(1)
  const find = () => {
    setView('table')
    void askFill(question.key, question.task(seed))
    setSeed(seed + 1)
  }
  const isRunning = entry?.status === 'running'
  return (
    <>
      {!isRunning && (
        <div className="button-row">
          <button type="button" className={entry === null ? 'button button-main' : 'button'} onClick={find}>
            {ft(entry === null || entry.finding === null ? 'find' : 'again')}
          </button>
        </div>
      )}
      {isOld && <p className="note">{ft('old')}</p>}
      {entry !== null && <FillLine entry={entry} />}
      {entry !== null && entry.finding !== null && (
        <Proposals option={option} question={question} finding={entry.finding} />
      )}
    </>
  )
}

/** Which offcuts lie well in the gaps: looked for when asked, kept when the maker says so. */
export function FillPart({ option }: { readonly option: Option }) {
  const [wishes, setWishes] = useState(STARTING_WISHES)
  const question = useFillQuestion(option.id, wishes)
  if (question === null) return null
  return (
    <PanelPart title={ft('title')} note={ft('note')}>
      <FillSearch key={option.id} option={option} question={question} />
      <Limits wishes={wishes} leastJointMm={option.leastJointMm} onChange={setWishes} />
    </PanelPart>
  )
}
