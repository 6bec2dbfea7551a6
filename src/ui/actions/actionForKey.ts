import type { Action, Shortcut } from './action'

export interface KeyStroke {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

function isStroke(shortcut: Shortcut, stroke: KeyStroke): boolean {
  const hasCommand = stroke.ctrlKey || stroke.metaKey
  // A sign such as ? is typed with Shift on some keyboards and without it on others: only letters ask for it.
  const isLetter = /^\p{L}$/u.test(shortcut.key)
  return (
    stroke.key.toLowerCase() === shortcut.key.toLowerCase() &&
    hasCommand === (shortcut.command ?? false) &&
    (!isLetter || stroke.shiftKey === (shortcut.shift ?? false)) &&
    !stroke.altKey
  )
}

/**
 * The action that a key stroke asks for.
 * @param isTyping  a text box has the focus: it keeps plain letters, and undo of its own text
 */
export function actionForKey(
  actions: readonly Action[],
  stroke: KeyStroke,
  isTyping: boolean,
): Action | null {
  const asked = actions.find(({ shortcuts }) => shortcuts.some((shortcut) => isStroke(shortcut, stroke)))
  if (asked === undefined) return null
  return isTyping && asked.group !== 'job' ? null : asked
}
