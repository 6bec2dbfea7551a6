import type { Action, Shortcut } from './action'

export interface KeyStroke {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/** Where the focus is. */
export type FocusPlace = 'canvas' | 'text-box' | 'elsewhere'

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
 * The action that a key stroke asks for. A key without Ctrl counts only while the canvas has the focus: somebody who
 * speaks to the computer types letters without meaning them (WCAG 2.2, 2.1.4). A text box keeps undo for its own text.
 */
export function actionForKey(
  actions: readonly Action[],
  stroke: KeyStroke,
  place: FocusPlace,
): Action | null {
  const asked = actions.find(({ shortcuts }) => shortcuts.some((shortcut) => isStroke(shortcut, stroke)))
  if (asked === undefined) return null
  const hasCommand = stroke.ctrlKey || stroke.metaKey
  if (!hasCommand && place !== 'canvas') return null
  return place === 'text-box' && asked.group !== 'job' ? null : asked
}
