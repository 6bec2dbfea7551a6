import { useState } from 'react'
import type { Option } from '../../../core/plan'
import { addLongerOption } from '../../../state/commands'
import { newId } from '../../../state/newId'
import { run } from '../../../state/run'
import { sessionStore } from '../../../state/sessionStore'
import { LengthField } from '../../fields/LengthField'
import { readyValue } from '../../readyValue'
import { type Format, useFormat } from '../../text/useFormat'
import { useOption, useShownPlan } from '../../useActive'
import { usePlanResult } from '../../usePlanResult'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'

interface Row {
  readonly option: Option
  readonly size: string
  readonly totalCents: number | null
  readonly isBlocked: boolean
}

function useRows(format: Format): readonly Row[] {
  const result = usePlanResult()
  return useShownPlan().options.map((option) => {
    const found = result.options.get(option.id)
    const footprint = readyValue(found?.footprint)
    return {
      option,
      size:
        footprint === null
          ? ''
          : `${format.length(footprint.finishedLengthMm)} × ${format.length(footprint.finishedWidthMm)}`,
      totalCents: readyValue(found?.build)?.price.quote.totalCents ?? null,
      isBlocked: found?.build.state === 'blocked',
    }
  })
}

const signed = (cents: number, format: Format): string =>
  cents > 0 ? `+${format.money(cents)}` : format.money(cents)

function Compared({ rows }: { readonly rows: readonly Row[] }) {
  const format = useFormat()
  const shownId = useOption()?.id
  const firstCents = rows[0]?.totalCents ?? null
  return (
    <ul className="cards">
      {rows.map(({ option, size, totalCents, isBlocked }, at) => (
        <li key={option.id} className="card" data-option={option.id}>
          <div className="row-head">
            <strong>{option.name}</strong>
            {option.id === shownId ? (
              <span>{bt('options-shown')}</span>
            ) : (
              <button
                type="button"
                className="button button-small"
                onClick={() => sessionStore.setState({ optionId: option.id })}
              >
                {bt('options-open')}
                <span className="unseen"> {option.name}</span>
              </button>
            )}
          </div>
          <dl className="figures">
            <div>
              <dt>{bt('options-size')}</dt>
              <dd>{size}</dd>
            </div>
            <div className="figures-total">
              <dt>{bt('options-price')}</dt>
              <dd>
                {totalCents === null
                  ? bt(isBlocked ? 'not-known' : 'options-working')
                  : format.money(totalCents)}
              </dd>
            </div>
            {at > 0 && totalCents !== null && firstCents !== null && (
              <div>
                <dt>{bt('options-difference')}</dt>
                <dd>{signed(totalCents - firstCents, format)}</dd>
              </div>
            )}
          </dl>
        </li>
      ))}
    </ul>
  )
}

const USUAL_STEP_MM = 200

function Longer({ option }: { readonly option: Option }) {
  const format = useFormat()
  const [byMm, setByMm] = useState(USUAL_STEP_MM)
  const by = format.length(Math.abs(byMm))
  const add = () => {
    const words = byMm < 0 ? bt('options-shorter-by', { by }) : bt('options-longer-by', { by })
    run(addLongerOption, {
      optionId: newId(),
      copyOf: option.id,
      name: bt('options-longer-name', { name: option.name, by: words }),
      byMm,
    })
  }
  return (
    <div className="field-pairs">
      <LengthField
        label={bt('options-longer')}
        valueMm={byMm}
        limits={{ leastMm: -1000, greatestMm: 2000 }}
        onChange={setByMm}
      />
      <button type="button" className="button" disabled={byMm === 0} onClick={add}>
        {bt('options-add')}
      </button>
    </div>
  )
}

/** Every option of the job with its price, and one more that is longer. */
export function OptionsPart({ option }: { readonly option: Option }) {
  const format = useFormat()
  const rows = useRows(format)
  return (
    <PanelPart title={bt('options-title')} note={bt('options-note')}>
      {rows.length > 1 && <Compared rows={rows} />}
      <Longer option={option} />
    </PanelPart>
  )
}
