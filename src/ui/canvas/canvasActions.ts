import { setSelection, setTool, setView } from '../../state/sessionStore'
import type { Action } from '../actions/action'
import { canvasStore, toolInHand } from './canvasStore'
import { currentScene, forgetCamera } from './currentScene'
import { zoomBy, ZOOM_STEP } from './keyInput'
import { sendToTool } from './sendToTool'
import type { ToolKey } from './tools/toolTypes'

const always = (): boolean => true

/** What the canvas can do from a menu or a shortcut anywhere on the page. */
export const canvasActions = [
  {
    id: 'zoom-in',
    label: 'canvas-zoom-in',
    group: 'look',
    shortcuts: [{ key: '+' }, { key: '=' }],
    isEnabled: always,
    perform: () => zoomBy(ZOOM_STEP),
  },
  {
    id: 'zoom-out',
    label: 'canvas-zoom-out',
    group: 'look',
    shortcuts: [{ key: '-' }],
    isEnabled: always,
    perform: () => zoomBy(1 / ZOOM_STEP),
  },
  {
    id: 'fit',
    label: 'canvas-fit',
    group: 'look',
    shortcuts: [{ key: '0' }],
    isEnabled: always,
    perform: forgetCamera,
  },
] as const satisfies readonly Action[]

/** Undo asks this first: an unfinished trace, board or datum gives up its last point. */
export function takeBack(): boolean {
  const answer = sendToTool({ kind: 'takeBack' })
  return !answer.unused
}

/** Is there an unfinished point that takeBack would give up? */
export function canTakeBack(): boolean {
  const { slab, tool, tracing } = currentScene()
  if (tracing.edge?.meaning === tool) return true
  if ((tool === 'wood' || tool === 'notWood') && tracing.strokes.length > 0) return true
  return toolInHand(canvasStore.getState(), slab?.id ?? null, tool).unfinished.length > 0
}

const press = (key: ToolKey): void => {
  sendToTool({ kind: 'key', key, shift: false, alt: false, crosshair: null })
  sendToTool({ kind: 'keyRelease' })
}

/** Closes the trace that is being drawn. */
export const closeTrace = (): void => press('Enter')

/** Turns the selected piece over. */
export const turnOverSelected = (): void => press('o')

/** Takes the selected piece off the table again, or removes the selected point. */
export const removeSelected = (): void => press('Delete')

/** Lays an offcut into the largest gap, from where it is moved on by hand or by keys. */
export function layOffcut(key: string): void {
  setView('table')
  setTool('piece')
  setSelection({ kind: 'piece', key })
  press('Enter')
}
