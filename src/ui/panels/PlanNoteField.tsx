import { useId, useState } from 'react'
import { setPlanNote } from '../../state/commands'
import { run } from '../../state/run'
import { t } from '../text/t'
import { useShownPlan } from '../useActive'

/** A note that is printed with the sheet. Kept when the box is left, as one step. */
export function PlanNoteField() {
  const id = useId()
  const { note } = useShownPlan()
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: string } | null>(null)
  const current = typed !== null && typed.over === note ? typed.text : note
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {t('paper-note')}
      </label>
      <textarea
        id={id}
        rows={2}
        maxLength={4000}
        value={current}
        onChange={(event) => setTyped({ text: event.currentTarget.value, over: note })}
        onBlur={() => {
          setTyped(null)
          run(setPlanNote, { note: current })
        }}
      />
    </div>
  )
}
