import { type Point, pointDistanceMm, type PxPoint } from '../../../../core/geometry'
import { HIT_RADIUS_PX, hitPoint } from '../../hitTest'
import { screenOf } from '../../view'
import { aimedPx, moveAim, startAim } from '../aim'
import { EMPTY_HAND } from '../grab'
import { movePointDrag, startPointDrag } from '../pointDrag'
import type { PointerKind, Scene, ToolEvent, ToolStep } from '../toolTypes'
import { type Drawing, drawingOf, type TraceMeaning, type TraceState } from './traceState'

/** Fewer points enclose nothing. */
export const LEAST_RING_POINTS = 3
/** Points set already are grabbed only from nearer than usual: the next point often belongs close to the last. */
const EARLIER_POINT_REACH: Readonly<Record<PointerKind, number>> = { mouse: 6, touch: 14, pen: 8, keys: 0 }

/** A ring half drawn. */
export function stepDrawing(
  meaning: TraceMeaning,
  state: Drawing,
  event: ToolEvent,
  scene: Scene,
): ToolStep<TraceState> {
  switch (event.kind) {
    case 'press':
      return pressed(state, event, scene)
    case 'drag':
      return { state: moved(state, event.screen, scene) }
    case 'release':
      return released(meaning, moved(state, event.screen, scene), scene)
    case 'abandon':
      return { state: drawingOf(state.points) }
    case 'key':
      return keyed(meaning, state, event, scene)
    case 'takeBack':
      return takeBack(state)
    case 'tap':
    case 'keyRelease':
      return { state, unused: true }
  }
}

const screenPoints = (state: Drawing, scene: Scene): readonly Point[] =>
  state.points.map((point) => screenOf(scene.camera, point))

/** The first point keeps the full reach, since a tap on it closes the ring. */
function pointAt(state: Drawing, screen: Point, pointer: PointerKind, scene: Scene): number | null {
  const points = screenPoints(state, scene)
  const [first] = points
  const canClose = points.length >= LEAST_RING_POINTS
  if (first && canClose && pointDistanceMm(first, screen) <= HIT_RADIUS_PX[pointer]) return 0
  return hitPoint(points, screen, EARLIER_POINT_REACH[pointer])
}

function pressed(
  state: Drawing,
  { screen, pointer }: Extract<ToolEvent, { kind: 'press' }>,
  scene: Scene,
): ToolStep<TraceState> {
  const index = pointAt(state, screen, pointer, scene)
  const at = index === null ? undefined : state.points[index]
  if (index === null || !at) {
    return { state: { ...state, aiming: startAim(screen, pointer, scene) }, taken: true }
  }
  const target = { kind: 'tracePoint', traceId: '', index } as const
  return {
    state: { ...state, dragging: { index, drag: startPointDrag(target, at, screen, pointer) } },
    taken: true,
  }
}

function moved(state: Drawing, screen: Point, scene: Scene): Drawing {
  if (state.dragging) {
    const drag = movePointDrag(state.dragging.drag, screen, scene)
    return { ...state, dragging: { ...state.dragging, drag } }
  }
  return { ...state, aiming: state.aiming && moveAim(state.aiming, screen, scene) }
}

function released(meaning: TraceMeaning, state: Drawing, scene: Scene): ToolStep<TraceState> {
  const { dragging, aiming, points } = state
  if (dragging?.drag.moved) {
    return {
      state: drawingOf(points.with(dragging.index, dragging.drag.atPx)),
      say: { kind: 'point-moved', number: dragging.index + 1 },
    }
  }
  if (dragging) return dragging.index === 0 ? close(meaning, points, scene) : { state: drawingOf(points) }
  return aiming ? withPoint(points, aiming.at, scene) : { state }
}

function withPoint(points: readonly PxPoint[], world: Point, scene: Scene): ToolStep<TraceState> {
  const atPx = aimedPx(world, scene)
  if (!atPx) return { state: drawingOf(points), say: { kind: 'outside-photo' } }
  const last = points.at(-1)
  if (last && scene.followsEdge) return clinging(points.slice(0, -1), last, atPx)
  return { state: drawingOf([...points, atPx]), say: { kind: 'point-set', number: points.length + 1 } }
}

/** What was drawn point by point goes on as a line that clings to the edge. */
const clinging = (before: readonly PxPoint[], at: PxPoint, next: PxPoint): ToolStep<TraceState> => ({
  state: { kind: 'open', grab: EMPTY_HAND, aiming: null, dropped: [] },
  trace: [
    { kind: 'start-edge', at, before },
    { kind: 'pin-edge', at: next },
  ],
  say: { kind: 'stretch-pinned' },
})

function close(meaning: TraceMeaning, points: readonly PxPoint[], scene: Scene): ToolStep<TraceState> {
  const { slab, photo } = scene
  if (points.length < LEAST_RING_POINTS || !slab || !photo) {
    return { state: drawingOf(points), say: { kind: 'points-missing', placed: points.length } }
  }
  const traceId = scene.newId()
  return {
    state: { kind: 'open', grab: EMPTY_HAND, aiming: null, dropped: [] },
    command: {
      name: 'addTrace',
      args: {
        slabId: slab.id,
        photoId: photo.id,
        traceId,
        meaning: meaning === 'outline' ? { kind: 'outline' } : { kind: 'void', depth: { kind: 'through' } },
        ringPx: points,
      },
    },
    select: { kind: 'trace', traceId, point: null },
    say: { kind: 'trace-closed', meaning, points: points.length },
  }
}

function keyed(
  meaning: TraceMeaning,
  state: Drawing,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<TraceState> {
  switch (event.key) {
    case 'Enter':
      return event.crosshair
        ? setByKeys(meaning, state, event.crosshair, scene)
        : close(meaning, state.points, scene)
    case 'Backspace':
    case 'Delete':
      return takeBack(state)
    case 'Escape':
      return escaped(state)
    default:
      return { state, unused: true }
  }
}

/** Enter sets the crosshair's point, or closes the ring when the crosshair is on its first point. */
function setByKeys(
  meaning: TraceMeaning,
  state: Drawing,
  crosshair: Point,
  scene: Scene,
): ToolStep<TraceState> {
  const onFirst = pointAt(state, screenOf(scene.camera, crosshair), 'keys', scene) === 0
  return onFirst ? close(meaning, state.points, scene) : withPoint(state.points, crosshair, scene)
}

/** One level: first the press, then the whole unfinished ring, which undo can bring back. */
function escaped(state: Drawing): ToolStep<TraceState> {
  if (state.aiming || state.dragging) return { state: drawingOf(state.points) }
  return {
    state: { kind: 'open', grab: EMPTY_HAND, aiming: null, dropped: state.points },
    say: { kind: 'trace-dropped' },
  }
}

function takeBack({ points }: Drawing): ToolStep<TraceState> {
  const left = points.slice(0, -1)
  return {
    state: left.length > 0 ? drawingOf(left) : { kind: 'open', grab: EMPTY_HAND, aiming: null, dropped: [] },
    say: { kind: 'point-taken-back', left: left.length },
  }
}
