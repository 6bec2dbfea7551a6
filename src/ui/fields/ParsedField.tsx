import { type KeyboardEvent, type ReactNode, useId } from 'react'
import type { Result } from '../../core/units'
import { useDescribeProblem } from '../text/useDescribeProblem'
import { afterPress } from './afterPress'
import type { FieldBasics } from './fieldBasics'
import { FieldFrame, noteIds } from './FieldFrame'
import { useTypedText } from './useTypedText'

export interface NudgeSize {
  readonly direction: 1 | -1
  readonly coarse: boolean
  readonly fine: boolean
}

interface Props<T> extends FieldBasics {
  readonly shown: string
  readonly parse: (text: string) => Result<T>
  readonly onCommit: (value: T) => void
  readonly onNudge?: ((size: NudgeSize) => void) | undefined
  readonly inputMode?: 'text' | 'decimal'
  readonly placeholder?: string
  readonly suffix?: ReactNode
  readonly maxLength?: number
}

function nudgeOf(event: KeyboardEvent): NudgeSize | null {
  if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return null
  return { direction: event.key === 'ArrowUp' ? 1 : -1, coarse: event.shiftKey, fine: event.altKey }
}

/** A text box over a value: keeps what was typed, reads it on Enter or on leaving, says what is wrong underneath. */
export function ParsedField<T>(props: Props<T>) {
  const id = useId()
  const describeProblem = useDescribeProblem()
  const typed = useTypedText(props.shown, props.parse, props.onCommit)
  const problem = typed.problem === null ? undefined : describeProblem(typed.problem)

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const nudge = nudgeOf(event)
    if (event.key === 'Enter') typed.settle()
    if (event.key === 'Escape' && typed.text !== props.shown) {
      // Escape backs out one level only: here it gives up the typed text.
      event.stopPropagation()
      typed.dropTyped()
    }
    if (nudge !== null && props.onNudge !== undefined) {
      event.preventDefault()
      typed.dropTyped()
      props.onNudge(nudge)
    }
  }

  return (
    <FieldFrame id={id} basics={props} problem={problem}>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        inputMode={props.inputMode ?? 'text'}
        placeholder={props.placeholder}
        maxLength={props.maxLength}
        disabled={props.disabled}
        value={typed.text}
        aria-invalid={problem !== undefined}
        aria-describedby={noteIds(id, props, problem)}
        onChange={(event) => typed.type(event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={() => afterPress(typed.settle)}
        onKeyDown={onKeyDown}
      />
      {props.suffix}
    </FieldFrame>
  )
}
