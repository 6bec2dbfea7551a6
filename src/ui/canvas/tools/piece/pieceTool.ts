import type { Point } from '../../../../core/geometry'
import { selectionAt, trayKeyAt } from '../../bodies'
import { EMPTY_HAND, type Grab, grabBody, grabHandle, stepGrab } from '../grab'
import { poseCommand } from '../poseCommand'
import { stepKey } from '../select/selectTool'
import type { Handle, PointerKind, PoseTarget, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { readyValue } from '../../scene'
import { interiorPoint, regionBounds } from '../../../../core/geometry'
import { movedPose } from '../../poseEdits'

const isTurnHandle = (handle: Handle): boolean => handle.kind === 'turnHandle'

/** Drags offcuts out of the tray into the table's gaps and about, turns them by their handle, turns them over. */
export const pieceTool: Tool<Grab> = {
  idle: EMPTY_HAND,
  step: (state, event, scene) => stepGrab(state, event, scene) ?? stepIdle(event, scene),
  aim: () => null,
  unfinished: () => [],
}

function stepIdle(event: ToolEvent, scene: Scene): ToolStep<Grab> {
  switch (event.kind) {
    case 'press':
      return pressed(event.screen, event.pointer, scene)
    case 'tap': {
      const selection = selectionAt(scene, event.screen, event.pointer)
      return selection
        ? { state: EMPTY_HAND, select: selection, say: { kind: 'selected', selection } }
        : { state: EMPTY_HAND, select: null }
    }
    case 'key':
      return event.key === 'Enter' ? layByKeys(scene) : stepKey(event, scene)
    case 'drag':
    case 'release':
    case 'abandon':
    case 'keyRelease':
    case 'takeBack':
      return { state: EMPTY_HAND, unused: true }
  }
}

function pressed(screen: Point, pointer: PointerKind, scene: Scene): ToolStep<Grab> {
  const turning = grabHandle(scene, screen, pointer, isTurnHandle)
  if (turning) return turning
  const selection = scene.view === 'table' ? selectionAt(scene, screen, pointer) : null
  if (selection?.kind === 'placement') {
    const target = { kind: 'placement', placementId: selection.placementId } as const
    const grabbed = grabBody(scene, target, screen, pointer)
    if (grabbed) return { ...grabbed, select: selection }
  }
  const key = scene.view === 'table' ? trayKeyAt(scene, screen) : null
  const fromTray = key === null ? null : grabBody(scene, trayTarget(key, scene), screen, pointer)
  return fromTray ?? { state: EMPTY_HAND, taken: false }
}

const trayTarget = (pieceKey: string, scene: Scene): PoseTarget => ({
  kind: 'tray',
  pieceKey,
  pieceId: scene.newId(),
  placementId: scene.newId(),
})

/** Enter lays the selected offcut with its middle into the largest gap; the arrow keys then move it. */
function layByKeys(scene: Scene): ToolStep<Grab> {
  const { selection } = scene
  const offcut =
    selection?.kind === 'piece' ? scene.tray.find(({ piece }) => piece.key === selection.key) : undefined
  const gaps = readyValue(scene.optionResult?.coverage)?.gaps ?? []
  const largest = gaps.toSorted((a, b) => b.areaMm2 - a.areaMm2)[0]
  if (!offcut || !largest || !scene.option) return { state: EMPTY_HAND, unused: true }
  const { minX, minY, maxX, maxY } = regionBounds(offcut.region)
  const [x, y] = interiorPoint(largest.region)
  const target = trayTarget(offcut.piece.key, scene)
  const pose = movedPose(offcut.pose, x - (minX + maxX) / 2, y - (minY + maxY) / 2)
  const command = poseCommand(target, pose, scene)
  if (command?.name !== 'layPiece') return { state: EMPTY_HAND, unused: true }
  return {
    state: EMPTY_HAND,
    command,
    select: { kind: 'placement', placementId: command.args.placementId },
    say: { kind: 'piece-laid' },
  }
}
