import { type Point, pointDistanceMm, type PxPoint } from '../../../core/geometry'
import { TAP_SLOP_PX } from '../hitTest'
import { worldOf } from '../view'
import type { Aim, PointerKind, Scene } from './toolTypes'

/**
 * A new point about to be set: pressed, maybe dragged, set on release. A tap sets it where the finger is. Once a finger
 * drags, the point runs ahead of it, so that the fingertip does not hide what it points at.
 */
export interface Aiming {
  readonly pointer: PointerKind
  readonly startScreen: Point
  readonly screen: Point
  readonly moved: boolean
  readonly at: Point
}

/** How far above a dragging fingertip its point stands, screen px. */
export const FINGER_LEAD_PX = 48

export const startAim = (screen: Point, pointer: PointerKind, scene: Scene): Aiming => ({
  pointer,
  startScreen: screen,
  screen,
  moved: false,
  at: worldOf(scene.camera, screen),
})

export function moveAim(aim: Aiming, screen: Point, scene: Scene): Aiming {
  const moved = aim.moved || pointDistanceMm(aim.startScreen, screen) > TAP_SLOP_PX[aim.pointer]
  if (!moved) return { ...aim, screen }
  const lead = aim.pointer === 'touch' ? FINGER_LEAD_PX : 0
  return { ...aim, screen, moved, at: worldOf(scene.camera, [screen[0], screen[1] - lead]) }
}

export const aimOf = (aiming: Aiming): Aim => ({
  world: aiming.at,
  pointerAt: aiming.screen,
  pointer: aiming.pointer,
})

/** The photo pixel aimed at; null when it lies beside the photo. */
export function aimedPx(world: Point, { photo, frames }: Pick<Scene, 'photo' | 'frames'>): PxPoint | null {
  const px = frames.pxFromWorld(world)
  if (!photo || !px) return null
  const isInside = px[0] >= 0 && px[1] >= 0 && px[0] <= photo.widthPx && px[1] <= photo.heightPx
  return isInside ? px : null
}
