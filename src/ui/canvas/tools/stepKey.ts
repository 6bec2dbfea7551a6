import { EMPTY_HAND, type Grab, startNudge } from './grab'
import { removeSelected } from './removeSelected'
import type { Scene, ToolEvent, ToolStep } from './toolTypes'

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
