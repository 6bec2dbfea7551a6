import { useStore } from 'zustand'
import { HISTORY_LIMIT } from '../../state/history'
import { planStore } from '../../state/planStore'
import { ActionButton } from '../actions/ActionButton'
import { RedoIcon, UndoIcon } from '../icons'
import { isTextKey, t } from '../text/t'

/** "Undo: move a mark"; a step without a name is just undone. */
function stepText(kind: 'undo' | 'redo', label: string | undefined, isTrimmed = false): string {
  if (label === undefined && isTrimmed) return t('undo-no-further', { steps: String(HISTORY_LIMIT) })
  const key = `command-${label ?? ''}`
  return isTextKey(key) ? t(`step-${kind}`, { step: t(key) }) : t(`action-${kind}`)
}

/** Undo and redo, each saying what it would take back or bring back. */
export function UndoButtons() {
  const undone = useStore(planStore, ({ past }) => past.at(-1)?.label)
  const isTrimmed = useStore(planStore, ({ historyTrimmed }) => historyTrimmed)
  const redone = useStore(planStore, ({ future }) => future[0]?.label)
  return (
    <>
      <ActionButton
        id="undo"
        className="button-bare"
        icon={<UndoIcon />}
        label={stepText('undo', undone, isTrimmed)}
      />
      <ActionButton id="redo" className="button-bare" icon={<RedoIcon />} label={stepText('redo', redone)} />
    </>
  )
}
