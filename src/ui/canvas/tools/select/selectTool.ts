import { isOnBody, selectionAt } from '../../bodies'
import { aimOfGrab, EMPTY_HAND, type Grab, grabBody, grabHandle, startNudge, stepGrab } from '../grab'
import { removeSelected } from '../removeSelected'
import type { PoseTarget, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

/**
 * Select and move. Points are dragged straight away; a body only once it is selected, so that one can pan over a table
 * that fills the screen. A tap selects what lies under it, a tap beside everything selects nothing.
 */
export const selectTool: Tool<Grab> = {
  idle: EMPTY_HAND,
  step: (state, event, scene) => stepGrab(state, event, scene) ?? stepIdle(event, scene),
  aim: aimOfGrab,
  unfinished: () => [],
}

function stepIdle(event: ToolEvent, scene: Scene): ToolStep<Grab> {
  switch (event.kind) {
    case 'press': {
      const { screen, pointer } = event
      const body = selectedBody(scene)
      return (
        grabHandle(scene, screen, pointer) ??
        (body && isOnBody(scene, body, screen) ? grabBody(scene, body, screen, pointer) : null) ?? {
          state: EMPTY_HAND,
          taken: false,
        }
      )
    }
    case 'tap':
      return tapped(event, scene)
    case 'key':
      return stepKey(event, scene)
    case 'drag':
    case 'release':
    case 'abandon':
    case 'keyRelease':
    case 'takeBack':
      return { state: EMPTY_HAND, unused: true }
  }
}

function selectedBody({ selection }: Scene): PoseTarget | null {
  if (selection?.kind === 'footprint') return { kind: 'footprint' }
  return selection?.kind === 'placement' ? { kind: 'placement', placementId: selection.placementId } : null
}

function tapped(event: Extract<ToolEvent, { kind: 'tap' }>, scene: Scene): ToolStep<Grab> {
  const selection = selectionAt(scene, event.screen, event.pointer)
  if (selection) return { state: EMPTY_HAND, select: selection, say: { kind: 'selected', selection } }
  return scene.selection
    ? { state: EMPTY_HAND, select: null, say: { kind: 'nothing-selected' } }
    : { state: EMPTY_HAND }
}

/** Keys that mean the same with every tool while something is selected. */
export function stepKey(event: Extract<ToolEvent, { kind: 'key' }>, scene: Scene): ToolStep<Grab> {
  const nudged = startNudge(event, scene)
  if (nudged) return nudged
  if (event.key === 'Delete' || event.key === 'Backspace') {
    const removed = removeSelected(EMPTY_HAND, scene)
    if (removed) return removed
  }
  if (event.key === 'Escape' && scene.selection) {
    return { state: EMPTY_HAND, select: null, say: { kind: 'nothing-selected' } }
  }
  return { state: EMPTY_HAND, unused: true }
}
