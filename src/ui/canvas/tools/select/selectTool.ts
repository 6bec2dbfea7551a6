import { selectionAt } from '../../bodies'
import { aimOfGrab, EMPTY_HAND, type Grab, grabBody, grabHandle, stepGrab } from '../grab'
import { pieceTool } from '../piece/pieceTool'
import { stepKey } from '../stepKey'
import type { PoseTarget, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

/**
 * Select and move. Points are dragged straight away; a body only once it is selected, so that one can pan over a table
 * that fills the screen. A tap selects what lies under it, a tap beside everything selects nothing. In the view of the
 * table it handles pieces like the tool made for them.
 */
export const selectTool: Tool<Grab> = {
  idle: EMPTY_HAND,
  step: (state, event, scene) =>
    scene.view === 'table'
      ? pieceTool.step(state, event, scene)
      : (stepGrab(state, event, scene) ?? stepIdle(event, scene)),
  aim: aimOfGrab,
  unfinished: () => [],
}

function stepIdle(event: ToolEvent, scene: Scene): ToolStep<Grab> {
  switch (event.kind) {
    case 'press':
      return pressed(event, scene)
    case 'tap':
      return tapped(event, scene)
    case 'key':
      return stepKey(event, scene)
    default:
      return { state: EMPTY_HAND, unused: true }
  }
}

function pressed({ screen, pointer }: Extract<ToolEvent, { kind: 'press' }>, scene: Scene): ToolStep<Grab> {
  const body = selectedBody(scene)
  return (
    grabHandle(scene, screen, pointer) ??
    (body && grabBody(scene, body, screen, pointer)) ?? { state: EMPTY_HAND, taken: false }
  )
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
