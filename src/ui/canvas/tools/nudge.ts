import {
  addPoints,
  applyIsometry,
  composeIsometries,
  invertIsometry,
  type Isometry,
  type Point,
  type PxPoint,
} from '../../../core/geometry'
import { degreesToRadians } from '../../../core/units'
import { movedPose, turnedOverPose, turnedPose } from '../poseEdits'
import { poseSubject } from '../poseSubject'
import { clickSdPx } from './clickCare'
import { pointCommand, withinPhoto } from './pointDrag'
import { poseCommand } from './poseCommand'
import type { ToolCommand } from './toolCommand'
import type { ArrowKey, PointTarget, PoseTarget, Scene, ToolKey } from './toolTypes'

/** One press of an arrow key: 1 mm (or photo pixel), with Shift 10, with Alt 0.1. */
const NUDGE_STEPS = { plain: 1, shift: 10, alt: 0.1 } as const
/** One press of [ or ]: a tenth of a degree, with Shift a whole one, with Alt a hundredth. */
const TURN_DEGREES = { plain: 0.1, shift: 1, alt: 0.01 } as const

interface Held {
  readonly shift: boolean
  readonly alt: boolean
}

const held = ({ shift, alt }: Held): keyof typeof NUDGE_STEPS => (alt ? 'alt' : shift ? 'shift' : 'plain')

const ARROWS: Readonly<Record<ArrowKey, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

export const isArrow = (key: ToolKey): key is ArrowKey => Object.hasOwn(ARROWS, key)

/** The step of an arrow key. */
export function arrowStep(key: ArrowKey, holding: Held, unit: number = 1): Point {
  const [x, y] = ARROWS[key]
  const length = unit * NUDGE_STEPS[held(holding)]
  return [x * length, y * length]
}

/** A key held down is one gesture: it goes on from where its last repeat has brought the thing, and ends on release. */
export type Nudge =
  | { readonly kind: 'point'; readonly target: PointTarget; readonly atPx: PxPoint }
  | { readonly kind: 'pose'; readonly target: PoseTarget; readonly pose: Isometry }

interface Key extends Held {
  readonly key: ToolKey
}

/** Null when the key does not nudge. */
export function nudgePoint(
  before: { readonly target: PointTarget; readonly atPx: PxPoint },
  key: Key,
  scene: Scene,
): Nudge | null {
  if (!isArrow(key.key)) return null
  const atPx = withinPhoto(addPoints(before.atPx, arrowStep(key.key, key)), scene)
  return { kind: 'point', target: before.target, atPx }
}

/** Null when the key neither moves, turns nor turns over, or the thing does not lie in this view. */
export function nudgePose(
  before: { readonly target: PoseTarget; readonly pose: Isometry },
  key: Key,
  scene: Scene,
): Nudge | null {
  const { target, pose } = before
  if (isArrow(key.key)) {
    const [dx, dy] = arrowStep(key.key, key)
    return { kind: 'pose', target, pose: movedPose(pose, dx, dy) }
  }
  if (key.key === '[' || key.key === ']') {
    const sign = key.key === '[' ? -1 : 1
    const angleRad = degreesToRadians(sign * TURN_DEGREES[held(key)])
    return { kind: 'pose', target, pose: turnedPose(pose, centreOf(scene, before), angleRad) }
  }
  if (key.key === 'o' && target.kind === 'placement') {
    return { kind: 'pose', target, pose: turnedOverPose(pose, centreOf(scene, before)) }
  }
  return null
}

/** The subject's centre, carried along by the steps that the held key has made already. */
function centreOf(scene: Scene, { target, pose }: { target: PoseTarget; pose: Isometry }): Point {
  const subject = poseSubject(scene, target)
  if (!subject) return [pose.xMm, pose.yMm]
  const made = composeIsometries(pose, invertIsometry(subject.pose))
  return applyIsometry(made, subject.centre, (x, y): Point => [x, y])
}

export const nudgeCommand = (nudge: Nudge, scene: Scene): ToolCommand | null =>
  nudge.kind === 'point'
    ? pointCommand(nudge.target, nudge.atPx, scene, { sdPx: clickSdPx('keys', scene), isKept: true })
    : poseCommand(nudge.target, nudge.pose, scene)
