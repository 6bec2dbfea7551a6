import type { ToolCommand } from './toolCommand'
import type { Scene, ToolStep } from './toolTypes'

/** What the delete key does with the selected thing; null when it is not the canvas's to remove. */
export function removeSelected<State>(state: State, scene: Scene): ToolStep<State> | null {
  const command = removalOf(scene)
  return command && { state, command, select: null, say: { kind: 'removed' } }
}

function removalOf({ selection, slab, option }: Scene): ToolCommand | null {
  switch (selection?.kind) {
    case 'mark':
      return slab && { name: 'removeMark', args: { slabId: slab.id, markId: selection.markId } }
    case 'trace':
      return slab && traceRemoval(slab.id, selection.traceId, selection.point)
    case 'placement':
      return (
        option && {
          name: 'removePlacement',
          args: { optionId: option.id, placementId: selection.placementId },
        }
      )
    default:
      return null
  }
}

const traceRemoval = (slabId: string, traceId: string, index: number | null): ToolCommand =>
  index === null
    ? { name: 'removeTrace', args: { slabId, traceId } }
    : { name: 'deleteTracePoint', args: { slabId, traceId, index } }
