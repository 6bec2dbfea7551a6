import { type BuildResult, buildWords, civilDay, dayText, type Option, type Plan } from '../../../core/plan'
import { USUAL_STEPS, WORK_STEPS, type WorkStepId } from '../../../core/quote'
import { NumberField } from '../../fields/NumberField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { useFormat } from '../../text/useFormat'
import { useShownPlan } from '../../useActive'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeShop } from './useBuild'

type Step = Plan['shop']['steps'][number]
type Timed = BuildResult['work']['steps'][number]

function swapped(steps: readonly Step[], at: number, by: 1 | -1): Step[] {
  const [one, other] = [steps[at], steps[at + by]]
  if (one === undefined || other === undefined) return [...steps]
  return steps.map((step, place) => (place === at ? other : place === at + by ? one : step))
}

interface RowProps {
  readonly step: Step
  readonly at: number
  readonly timed: Timed | undefined
  readonly when: (days: number) => string
}

function When({ timed, when }: Pick<RowProps, 'timed' | 'when'>) {
  if (timed === undefined) return null
  const [from, to] = [when(timed.firstDay), when(timed.lastDay)]
  return <span className="work-when">{from === to ? from : bt('work-span', { from, to })}</span>
}

function StepRow({ step, at, timed, when }: RowProps) {
  const { steps } = useShownPlan().shop
  const name = buildWords.step(step.id)
  const set = (changes: Partial<Step>) =>
    changeShop({ steps: steps.map((other) => (other === step ? { ...step, ...changes } : other)) })
  return (
    <li className="card" data-step={step.id}>
      <div className="row-head">
        <strong>
          {at + 1}. {name}
        </strong>
        <When timed={timed} when={when} />
      </div>
      <div className="work-fields">
        <OptionalNumberField
          label={bt('work-hours')}
          value={step.hours}
          limits={{ least: 0, greatest: 10_000 }}
          onChange={(hours) => hours !== null && set({ hours })}
        />
        <NumberField
          label={bt('work-wait')}
          value={step.waitDays}
          limits={{ least: 0, greatest: 365 }}
          onChange={(waitDays) => set({ waitDays: Math.round(waitDays) })}
        />
        <button
          type="button"
          className="button button-small"
          aria-label={bt('work-earlier', { step: name })}
          disabled={at === 0}
          onClick={() => changeShop({ steps: swapped(steps, at, -1) })}
        >
          ↑
        </button>
        <button
          type="button"
          className="button button-small"
          aria-label={bt('work-later', { step: name })}
          disabled={at === steps.length - 1}
          onClick={() => changeShop({ steps: swapped(steps, at, 1) })}
        >
          ↓
        </button>
        <button
          type="button"
          className="button button-small"
          aria-label={bt('work-leave-out', { step: name })}
          onClick={() => changeShop({ steps: steps.filter((other) => other !== step) })}
        >
          ✕
        </button>
      </div>
      {timed !== undefined && timed.needsLater.length > 0 && (
        <p className="field-problem">
          {bt('work-needs', { needs: timed.needsLater.map(buildWords.step).join('”, “') })}
        </p>
      )}
    </li>
  )
}

/** A step that is put back stands before the first that comes after it in the usual order. */
function putBack(steps: readonly Step[], id: WorkStepId): Step[] {
  const step = USUAL_STEPS.find((usual) => usual.id === id) ?? { id, hours: 0, waitDays: 0 }
  const place = WORK_STEPS.indexOf(id)
  const at = steps.findIndex((other) => WORK_STEPS.indexOf(other.id) > place)
  return at < 0 ? [...steps, step] : steps.toSpliced(at, 0, step)
}

function LeftOut({ steps }: { readonly steps: readonly Step[] }) {
  const missing = WORK_STEPS.filter((id) => !steps.some((step) => step.id === id))
  if (missing.length === 0) return null
  return (
    <>
      <p className="field-label">{bt('work-left-out')}</p>
      <div className="button-row">
        {missing.map((id) => (
          <button
            key={id}
            type="button"
            className="button button-small"
            onClick={() => changeShop({ steps: putBack(steps, id) })}
          >
            {buildWords.step(id)}
          </button>
        ))}
      </div>
    </>
  )
}

interface Props {
  readonly option: Option
  readonly work: BuildResult['work'] | null
}

/** The steps in the maker's order, with their hours and days. */
export function WorkPart({ option, work }: Props) {
  const format = useFormat()
  const { steps } = useShownPlan().shop
  const firstDay = civilDay(option.resin.start.day)
  return (
    <PanelPart title={bt('work-title')}>
      {work !== null && <p>{bt('work-all', { hours: format.hours(work.hours), days: work.shopDays })}</p>}
      {firstDay === null && <p className="note">{bt('work-no-day')}</p>}
      <ol className="cards work-list">
        {steps.map((step, at) => (
          <StepRow
            key={step.id}
            step={step}
            at={at}
            timed={work?.steps.find(({ id }) => id === step.id)}
            when={(days) => dayText(days, firstDay)}
          />
        ))}
      </ol>
      <LeftOut steps={steps} />
    </PanelPart>
  )
}
