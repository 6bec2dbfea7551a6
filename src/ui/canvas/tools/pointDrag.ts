import {
  addPoints,
  type Point,
  pointDistanceMm,
  pxPoint,
  type PxPoint,
  subtractPoints,
} from '../../../core/geometry'
import type { Slab } from '../../../core/plan'
import { TAP_SLOP_PX } from '../hitTest'
import type { Say } from '../say'
import { worldOf } from '../view'
import { clickSdPx } from './clickCare'
import type { ToolCommand } from './toolCommand'
import type { Aim, PointerKind, PointTarget, Scene } from './toolTypes'

/**
 * A point of the photo being dragged. It keeps its distance from the finger (no jump when grabbed), and does not move at
 * all until the press is more than a tap.
 */
export interface PointDrag {
  readonly target: PointTarget
  readonly pointer: PointerKind
  readonly startScreen: Point
  readonly startPx: PxPoint
  readonly screen: Point
  readonly atPx: PxPoint
  readonly moved: boolean
}

export const startPointDrag = (
  target: PointTarget,
  atPx: PxPoint,
  screen: Point,
  pointer: PointerKind,
): PointDrag => ({ target, pointer, startScreen: screen, startPx: atPx, screen, atPx, moved: false })

export function movePointDrag(drag: PointDrag, screen: Point, scene: Scene): PointDrag {
  const moved = drag.moved || pointDistanceMm(drag.startScreen, screen) > TAP_SLOP_PX[drag.pointer]
  if (!moved) return { ...drag, screen }
  const step = subtractPoints(worldOf(scene.camera, screen), worldOf(scene.camera, drag.startScreen))
  return { ...drag, screen, moved, atPx: withinPhoto(addPoints(drag.startPx, step), scene) }
}

/** The nearest pixel of the photo: marks and traces lie in it. */
export function withinPhoto([x, y]: Point, { photo }: Pick<Scene, 'photo'>): PxPoint {
  const clamp = (value: number, limit: number) => Math.min(limit, Math.max(0, value))
  return photo ? pxPoint(clamp(x, photo.widthPx), clamp(y, photo.heightPx)) : pxPoint(x, y)
}

export const aimOfDrag = (drag: PointDrag): Aim => ({
  world: drag.atPx,
  pointerAt: drag.screen,
  pointer: drag.pointer,
})

/** The command that leaves the point where the drag has brought it; null when nothing has changed. */
export function pointDragCommand(drag: PointDrag, scene: Scene): ToolCommand | null {
  if (!drag.moved && drag.target.kind !== 'newTracePoint') return null
  return pointCommand(drag.target, drag.atPx, scene, { sdPx: clickSdPx(drag.pointer, scene) })
}

/** How a point came to where it is: how well the hand could aim, and whether it is to stay exactly there. */
export interface Care {
  readonly sdPx: number
  readonly isKept?: boolean
}

export function pointCommand(
  target: PointTarget,
  atPx: PxPoint,
  scene: Scene,
  care: Care,
): ToolCommand | null {
  const { slab, photo } = scene
  if (!slab || !photo) return null
  const slabId = slab.id
  const photoId = photo.id
  switch (target.kind) {
    case 'mark':
      return { name: 'moveMark', args: { slabId, photoId, markId: target.markId, atPx, ...care } }
    case 'tracePoint':
      return {
        name: 'moveTracePoint',
        args: { slabId, traceId: target.traceId, index: target.index, atPx },
      }
    case 'newTracePoint':
      return {
        name: 'insertTracePoint',
        args: { slabId, traceId: target.traceId, index: target.index, atPx },
      }
    case 'linePoint':
      return {
        name: 'moveLinePoint',
        args: { slabId, photoId, lineId: target.lineId, index: target.index, atPx, sdPx: care.sdPx },
      }
    case 'datumEnd':
      return datumCommand(slab, photoId, target.end, atPx)
  }
}

function datumCommand(slab: Slab, photoId: string, end: 'from' | 'to', atPx: PxPoint): ToolCommand | null {
  const datum = slab.capture.kind === 'photo' ? slab.capture.datum : null
  if (!datum) return null
  const ends = end === 'from' ? { fromPx: atPx, toPx: datum.toPx } : { fromPx: datum.fromPx, toPx: atPx }
  return { name: 'setDatum', args: { slabId: slab.id, photoId, ...ends } }
}

/** What to say when the drag has ended. */
export function sayPointMoved(target: PointTarget): Say {
  switch (target.kind) {
    case 'mark':
      return { kind: 'mark-moved', markId: target.markId }
    case 'tracePoint':
      return { kind: 'point-moved', number: target.index + 1 }
    case 'linePoint':
      return { kind: 'point-moved', number: target.index + 1 }
    case 'newTracePoint':
      return { kind: 'point-added', number: target.index + 1 }
    case 'datumEnd':
      return { kind: 'datum-set' }
  }
}
