import type { Selection } from '../../../state/sessionStore'
import type { Say } from '../say'
import type { ToolCommand } from './toolCommand'
import type { PoseTarget } from './toolTypes'

/** What is selected once a rigid thing was put down; undefined: as before. */
export function selectionAfterPose(command: ToolCommand): Selection | null | undefined {
  if (command.name === 'layPiece') {
    return { kind: 'placement', placementId: command.args.placementId }
  }
  return command.name === 'removePlacement' ? null : undefined
}

export function sayPoseMoved(command: ToolCommand, target: PoseTarget): Say {
  if (command.name === 'removePlacement') return { kind: 'piece-returned' }
  if (target.kind === 'footprint') return { kind: 'table-moved' }
  return target.kind === 'tray' ? { kind: 'piece-laid' } : { kind: 'piece-moved' }
}
