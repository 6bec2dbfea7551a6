import { useEffect } from 'react'
import { actionForKey, type FocusPlace } from './actionForKey'
import { ACTIONS } from './registry'

function placeOf(target: EventTarget | null): FocusPlace {
  if (!(target instanceof HTMLElement)) return 'elsewhere'
  if (target.matches('input:not([type=radio], [type=checkbox], [type=range]), textarea, select'))
    return 'text-box'
  return target.closest('.canvas-place') === null ? 'elsewhere' : 'canvas'
}

function onKeyDown(event: KeyboardEvent): void {
  if (event.defaultPrevented || document.querySelector('dialog[open]') !== null) return
  const action = actionForKey(ACTIONS, event, placeOf(event.target))
  if (action === null || !action.isEnabled()) return
  event.preventDefault()
  action.perform()
}

/** Listens for the shortcuts of all actions while the workbench stands. */
export function useShortcuts(): void {
  useEffect(() => {
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
}
