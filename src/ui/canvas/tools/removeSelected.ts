import type { Photo, Slab } from '../../../core/plan'
import type { Selection } from '../../../state/sessionStore'
import type { ToolCommand } from './toolCommand'
import type { Scene, ToolStep } from './toolTypes'

/** What the delete key does with the selected thing; null when it is not the canvas's to remove. */
export function removeSelected<State>(state: State, scene: Scene): ToolStep<State> | null {
  const command = removalOf(scene)
  return command && { state, command, select: null, say: { kind: 'removed' } }
}

function removalOf({ selection, slab, photo, option }: Scene): ToolCommand | null {
  if (!selection) return null
  if (selection.kind === 'placement') return option && placementRemoval(option.id, selection.placementId)
  if (selection.kind === 'mark' && slab && photo) return markRemoval(slab, photo, selection.markId)
  return slab && slabRemoval(selection, slab.id, photo?.id ?? null)
}

function slabRemoval(selection: Selection, slabId: string, photoId: string | null): ToolCommand | null {
  switch (selection.kind) {
    case 'rule':
      return { name: 'removeRule', args: { slabId, ruleId: selection.ruleId } }
    case 'line':
      return photoId === null ? null : lineRemoval(slabId, photoId, selection.lineId)
    case 'trace':
      return traceRemoval(slabId, selection.traceId, selection.point)
    default:
      return null
  }
}

/** From a later photo a mark is only taken off: the slab has it by its first. */
function markRemoval({ id: slabId, capture }: Slab, photo: Photo, markId: string): ToolCommand {
  return capture.kind === 'photo' && photo !== capture.photos[0]
    ? { name: 'unplaceMark', args: { slabId, photoId: photo.id, markId } }
    : { name: 'removeMark', args: { slabId, markId } }
}

const placementRemoval = (optionId: string, placementId: string): ToolCommand => ({
  name: 'removePlacement',
  args: { optionId, placementId },
})

const lineRemoval = (slabId: string, photoId: string, lineId: string): ToolCommand => ({
  name: 'removeStraightLine',
  args: { slabId, photoId, lineId },
})

const traceRemoval = (slabId: string, traceId: string, index: number | null): ToolCommand =>
  index === null
    ? { name: 'removeTrace', args: { slabId, traceId } }
    : { name: 'deleteTracePoint', args: { slabId, traceId, index } }
