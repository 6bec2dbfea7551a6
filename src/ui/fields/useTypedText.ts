import { useState } from 'react'
import type { InputProblem, Result } from '../../core/units'

export interface TypedText {
  /** What the box shows: the typed text while it is being edited or is wrong, else the value in good form. */
  readonly text: string
  readonly problem: InputProblem | null
  type: (text: string) => void
  /** Reads what was typed; keeps it with its problem when it cannot be read. */
  settle: () => void
  /** Forgets what was typed. */
  dropTyped: () => void
}

interface Typed {
  readonly text: string
  /** The value's text when typing began: once the value changes elsewhere (undo, a drag) the typed text is stale. */
  readonly over: string
  readonly problem: InputProblem | null
}

/**
 * The state of one text box over a value of the plan.
 * @param shown   the value in good form
 * @param parse   reads typed text
 * @param commit  called with a value that could be read; never called when nothing was typed
 */
export function useTypedText<T>(
  shown: string,
  parse: (text: string) => Result<T>,
  commit: (value: T) => void,
): TypedText {
  const [typed, setTyped] = useState<Typed | null>(null)
  const current = typed !== null && typed.over === shown ? typed : null

  const settle = () => {
    if (current === null || current.text === shown) {
      setTyped(null)
      return
    }
    const parsed = parse(current.text)
    if (!parsed.ok) {
      setTyped({ ...current, problem: parsed.problem })
      return
    }
    setTyped(null)
    commit(parsed.value)
  }

  return {
    text: current?.text ?? shown,
    problem: current?.problem ?? null,
    type: (text) => setTyped({ text, over: shown, problem: null }),
    settle,
    dropTyped: () => setTyped(null),
  }
}
