import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { planStore } from '../../state/planStore'
import { sessionStore } from '../../state/sessionStore'
import { canvasStore } from '../canvas/canvasStore'
import { t } from '../text/t'
import type { Action } from './action'
import { actionById } from './perform'
import type { ActionId } from './registry'
import { shortcutText } from './shortcutText'

interface Props {
  readonly id: ActionId
  /** A picture in place of the words; the words are read out. */
  readonly icon?: ReactNode
  /** More exact words than the action's own. */
  readonly label?: string
  readonly className?: string
  readonly showsShortcut?: boolean
  readonly onDone?: () => void
}

/** Answers of an action, asked anew whenever one of the stores changes. */
function useAnswer(answer: () => boolean): boolean {
  useStore(planStore, answer)
  useStore(canvasStore, answer)
  return useStore(sessionStore, answer)
}

const never = () => false

function useActionState(action: Action): {
  readonly enabled: boolean
  readonly pressed: boolean | undefined
} {
  const enabled = useAnswer(action.isEnabled)
  const pressed = useAnswer(action.isPressed ?? never)
  return { enabled, pressed: action.isPressed === undefined ? undefined : pressed }
}

/** The button of one action. */
export function ActionButton({ id, icon, label, className, showsShortcut, onDone }: Props) {
  const action = actionById(id)
  const { enabled, pressed } = useActionState(action)
  const words = label ?? t(action.label)
  const [shortcut] = action.shortcuts
  const keys = shortcut === undefined ? undefined : shortcutText(shortcut)
  return (
    <button
      type="button"
      className={`button ${className ?? ''}`}
      disabled={!enabled}
      aria-pressed={pressed}
      aria-label={icon === undefined ? undefined : words}
      title={icon === undefined ? undefined : [words, keys].filter(Boolean).join('  ')}
      onClick={() => {
        onDone?.()
        action.perform()
      }}
    >
      {icon ?? words}
      {showsShortcut === true && keys !== undefined && <kbd aria-hidden="true">{keys}</kbd>}
    </button>
  )
}
