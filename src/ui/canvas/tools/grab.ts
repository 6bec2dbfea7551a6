import type { Point } from '../../../core/geometry'
import { isPointInRegion } from '../../../core/geometry'
import { sameData } from '../../../state/sameData'
import type { Selection } from '../../../state/sessionStore'
import { handlesOf } from '../handles'
import { hitHandle } from '../hitTest'
import { poseSubject } from '../poseSubject'
import type { Say } from '../say'
import { worldOf } from '../view'
import { type Nudge, nudgeCommand, nudgePoint, nudgePose } from './nudge'
import {
  aimOfDrag,
  movePointDrag,
  type PointDrag,
  pointDragCommand,
  sayPointMoved,
  startPointDrag,
} from './pointDrag'
import { movePoseDrag, type PoseDrag, poseDragCommand, startPoseDrag } from './poseDrag'
import { sayPoseMoved, selectionAfterPose } from './poseOutcome'
import type { Aim, Handle, PointerKind, PoseTarget, Scene, ToolEvent, ToolStep } from './toolTypes'

/** What the hand holds: shared by every tool that moves things which are there already. */
export type Grab =
  | { readonly kind: 'none' }
  | { readonly kind: 'point'; readonly drag: PointDrag }
  | { readonly kind: 'pose'; readonly drag: PoseDrag }
  | { readonly kind: 'nudge'; readonly nudge: Nudge }

export const EMPTY_HAND: Grab = { kind: 'none' }

/** Takes hold of the handle under a press; null when there is none that this tool accepts. */
export function grabHandle(
  scene: Scene,
  screen: Point,
  pointer: PointerKind,
  accepts: (handle: Handle) => boolean = () => true,
): ToolStep<Grab> | null {
  const handle = hitHandle(
    handlesOf(scene),
    screen,
    pointer,
    (other) => other.grab !== null && accepts(other),
  )
  if (!handle?.grab) return null
  const { grab, selection } = handle
  if (grab.kind === 'turn') {
    const drag = startPoseDrag(grab.target, 'turn', screen, pointer, scene)
    return drag && { state: { kind: 'pose', drag }, taken: true }
  }
  const drag = startPointDrag(grab.target, grab.at, screen, pointer)
  return { state: { kind: 'point', drag }, taken: true, select: selection }
}

/** Takes hold of a body (table, piece) under a press. */
export function grabBody(
  scene: Scene,
  target: PoseTarget,
  screen: Point,
  pointer: PointerKind,
): ToolStep<Grab> | null {
  const subject = poseSubject(scene, target)
  const at = subject?.frameOf(worldOf(scene.camera, screen))
  if (!subject || !at || !isPointInRegion(at, subject.body)) return null
  const drag = startPoseDrag(target, 'move', screen, pointer, scene)
  return drag && { state: { kind: 'pose', drag }, taken: true }
}

/** Goes on with what the hand holds; null when it is empty or the event is not for it. */
export function stepGrab(grab: Grab, event: ToolEvent, scene: Scene): ToolStep<Grab> | null {
  switch (grab.kind) {
    case 'none':
      return null
    case 'nudge':
      return stepNudge(grab.nudge, event, scene)
    case 'point':
    case 'pose':
      return stepDrag(grab, event, scene)
  }
}

type Dragging = Extract<Grab, { kind: 'point' | 'pose' }>

function stepDrag(grab: Dragging, event: ToolEvent, scene: Scene): ToolStep<Grab> | null {
  switch (event.kind) {
    case 'drag': {
      const after = dragged(grab, event.screen, scene)
      return { state: after, draft: commandOf(after, scene) }
    }
    case 'release':
      return released(dragged(grab, event.screen, scene), scene)
    case 'abandon':
      return { state: EMPTY_HAND }
    case 'key':
      return event.key === 'Escape' ? { state: EMPTY_HAND } : { state: grab, draft: commandOf(grab, scene) }
    case 'press':
    case 'tap':
    case 'keyRelease':
    case 'takeBack':
      return { state: grab, draft: commandOf(grab, scene), unused: true }
  }
}

const dragged = (grab: Dragging, screen: Point, scene: Scene): Dragging =>
  grab.kind === 'point'
    ? { kind: 'point', drag: movePointDrag(grab.drag, screen, scene) }
    : { kind: 'pose', drag: movePoseDrag(grab.drag, screen, scene) }

const commandOf = (grab: Dragging, scene: Scene) =>
  grab.kind === 'point' ? pointDragCommand(grab.drag, scene) : poseDragCommand(grab.drag, scene)

function released(grab: Dragging, scene: Scene): ToolStep<Grab> {
  const command = commandOf(grab, scene)
  if (!command) return { state: EMPTY_HAND }
  if (grab.kind === 'point') {
    return { state: EMPTY_HAND, command, say: sayPointMoved(grab.drag.target) }
  }
  const select = selectionAfterPose(command)
  return {
    state: EMPTY_HAND,
    command,
    say: sayPoseMoved(command, grab.drag.target),
    ...(select === undefined ? {} : { select }),
  }
}

function stepNudge(nudge: Nudge, event: ToolEvent, scene: Scene): ToolStep<Grab> | null {
  if (event.kind === 'key' && event.key !== 'Escape') {
    const after = nudge.kind === 'point' ? nudgePoint(nudge, event, scene) : nudgePose(nudge, event, scene)
    const next = after ?? nudge
    return { state: { kind: 'nudge', nudge: next }, draft: nudgeCommand(next, scene) }
  }
  if (event.kind === 'key' || event.kind === 'abandon') return { state: EMPTY_HAND }
  const command = nudgeCommand(nudge, scene)
  const done: ToolStep<Grab> = command
    ? { state: EMPTY_HAND, command, say: sayNudged(nudge, scene) }
    : { state: EMPTY_HAND }
  // Anything but another key ends the nudge; a press then starts afresh on the next event.
  return event.kind === 'keyRelease' ? done : { ...done, taken: true }
}

function sayNudged(nudge: Nudge, scene: Scene): Say {
  if (nudge.kind === 'point') return sayPointMoved(nudge.target)
  if (nudge.target.kind === 'footprint') return { kind: 'table-moved' }
  const before = poseSubject(scene, nudge.target)?.pose
  return { kind: before?.turnedOver === nudge.pose.turnedOver ? 'piece-moved' : 'turned-over' }
}

/** Starts to move the selected thing by keys; null when nothing is selected that the key would move. */
export function startNudge(event: Extract<ToolEvent, { kind: 'key' }>, scene: Scene): ToolStep<Grab> | null {
  const nudge = nudgeOfSelection(event, scene)
  return nudge && { state: { kind: 'nudge', nudge }, draft: nudgeCommand(nudge, scene) }
}

function nudgeOfSelection(event: Extract<ToolEvent, { kind: 'key' }>, scene: Scene): Nudge | null {
  const { selection } = scene
  if (!selection) return null
  const target = poseTargetOf(selection)
  if (target) {
    const subject = poseSubject(scene, target)
    return subject && nudgePose({ target, pose: subject.pose }, event, scene)
  }
  const handle = handlesOf(scene).find(
    (other) => other.grab?.kind === 'point' && sameData(other.selection, selection),
  )
  return handle?.grab?.kind === 'point'
    ? nudgePoint({ target: handle.grab.target, atPx: handle.grab.at }, event, scene)
    : null
}

const poseTargetOf = (selection: Selection): PoseTarget | null => {
  if (selection.kind === 'footprint') return { kind: 'footprint' }
  return selection.kind === 'placement' ? { kind: 'placement', placementId: selection.placementId } : null
}

export const aimOfGrab = (grab: Grab): Aim | null => (grab.kind === 'point' ? aimOfDrag(grab.drag) : null)
