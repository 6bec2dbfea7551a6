import {
  applyIsometryToRegion,
  invertIsometry,
  type Point,
  type Region,
  tablePoint,
  type TablePoint,
} from '../../../../core/geometry'
import { selectionAt, trayKeyAt } from '../../bodies'
import { EMPTY_HAND, type Grab, grabBody, grabHandle, stepGrab } from '../grab'
import { poseCommand } from '../poseCommand'
import { stepKey } from '../stepKey'
import type { Handle, PointerKind, PoseTarget, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { readyValue } from '../../../readyValue'
import { startingPlacement, type WoodAbout } from '../../../../core/layout'
import { footprintPoseOn } from '../../scene'

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
    default:
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

/** Enter lays the selected offcut along the largest gap, at the edge if there is one; the arrow keys then move it. */
function layByKeys(scene: Scene): ToolStep<Grab> {
  const offcut = selectedOffcut(scene)
  const gap = gapToFill(scene)
  if (!offcut || !gap) return { state: EMPTY_HAND, unused: true }
  const target = trayTarget(offcut.piece.key, scene)
  const command = poseCommand(
    target,
    startingPlacement(offcut.piece.region, gap.region, woodAbout(scene)),
    scene,
  )
  if (command?.name !== 'layPiece') return { state: EMPTY_HAND, unused: true }
  return {
    state: EMPTY_HAND,
    command,
    select: { kind: 'placement', placementId: command.args.placementId },
    say: { kind: 'piece-laid' },
  }
}

/** The table's own wood and the pieces that are laid already, in the table frame. */
function woodAbout(scene: Scene): WoodAbout {
  const placed = readyValue(scene.optionResult?.coverage)?.placed ?? []
  return {
    wood: [...ownWood(scene), ...placed.map(({ whole }) => whole)],
    leastJointMm: scene.option?.leastJointMm ?? 0,
  }
}

function ownWood({ option, slab, optionResult }: Scene): readonly Region<TablePoint>[] {
  const pose = footprintPoseOn(option, slab)
  if (pose === null) return []
  const onTable = invertIsometry(pose)
  const pieces = readyValue(optionResult?.pieces)?.pieces ?? []
  return pieces
    .filter(({ use }) => use === 'table')
    .map(({ region }) => applyIsometryToRegion(onTable, region, tablePoint))
}

const selectedOffcut = ({ selection, tray }: Scene) =>
  selection?.kind === 'piece' ? tray.find(({ piece }) => piece.key === selection.key) : undefined

function gapToFill({ optionResult }: Scene) {
  const gaps = readyValue(optionResult?.coverage)?.gaps ?? []
  const edges = gaps.filter(({ kind }) => kind === 'edge')
  return (edges.length > 0 ? edges : gaps).toSorted((a, b) => b.areaMm2 - a.areaMm2)[0]
}
