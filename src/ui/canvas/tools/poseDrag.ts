import { type Isometry, type Point, pointDistanceMm } from '../../../core/geometry'
import { TAP_SLOP_PX } from '../hitTest'
import { movedPose, turnBetween, turnedPose } from '../poseEdits'
import { poseSubject } from '../poseSubject'
import { worldOf } from '../view'
import { poseCommand } from './poseCommand'
import type { ToolCommand } from './toolCommand'
import type { PointerKind, PoseTarget, Scene } from './toolTypes'

/** Something rigid being moved, or turned about its centre. Lengths and angles are taken in the frame it lies in. */
export interface PoseDrag {
  readonly target: PoseTarget
  readonly how: 'move' | 'turn'
  readonly pointer: PointerKind
  readonly startScreen: Point
  /** The pressed point, in the frame. */
  readonly startAt: Point
  readonly centre: Point
  readonly startPose: Isometry
  readonly pose: Isometry
  readonly moved: boolean
}

/** Null when the target does not lie in this view, or the press is beyond the horizon. */
export function startPoseDrag(
  target: PoseTarget,
  how: PoseDrag['how'],
  screen: Point,
  pointer: PointerKind,
  scene: Scene,
): PoseDrag | null {
  const subject = poseSubject(scene, target)
  const startAt = subject?.frameOf(worldOf(scene.camera, screen))
  if (!subject || !startAt) return null
  return {
    target,
    how,
    pointer,
    startScreen: screen,
    startAt,
    centre: subject.centre,
    startPose: subject.pose,
    pose: subject.pose,
    moved: false,
  }
}

export function movePoseDrag(drag: PoseDrag, screen: Point, scene: Scene): PoseDrag {
  const moved = drag.moved || pointDistanceMm(drag.startScreen, screen) > TAP_SLOP_PX[drag.pointer]
  const at = poseSubject(scene, drag.target)?.frameOf(worldOf(scene.camera, screen))
  if (!moved || !at) return drag
  const pose =
    drag.how === 'move'
      ? movedPose(drag.startPose, at[0] - drag.startAt[0], at[1] - drag.startAt[1])
      : turnedPose(drag.startPose, drag.centre, turnBetween(drag.centre, drag.startAt, at))
  return { ...drag, moved, pose }
}

/** The command that leaves it where the drag has brought it; null when it has not moved. */
export const poseDragCommand = (drag: PoseDrag, scene: Scene): ToolCommand | null =>
  drag.moved ? poseCommand(drag.target, drag.pose, scene) : null
