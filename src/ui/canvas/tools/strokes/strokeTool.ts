import { type Point, pointDistanceMm, type PxPoint } from '../../../../core/geometry'
import type { Stroke } from '../../../../core/trace'
import { TAP_SLOP_PX } from '../../hitTest'
import { screenOf, worldOf } from '../../view'
import { aimedPx } from '../aim'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

/** A stroke under way. */
export interface StrokeState {
  readonly pressed: { readonly from: Point; readonly to: Point; readonly pointer: PointerKind } | null
  /** Set by the keys: the stroke begins there. */
  readonly keyed: PxPoint | null
}

const IDLE: StrokeState = { pressed: null, keyed: null }

/** Marks what is wood, or what is not: a stroke by drag, a spot by tap; by keys the two ends one after the other. */
export const strokeTool = (kind: Stroke['kind']): Tool<StrokeState> => ({
  idle: IDLE,
  step: (state, event, scene) => step(kind, state, event, scene),
  aim: () => null,
  unfinished: ({ keyed }) => (keyed ? [keyed] : []),
  rubber: ({ pressed }) => (pressed ? [pressed.from, pressed.to] : null),
})

function step(
  kind: Stroke['kind'],
  state: StrokeState,
  event: ToolEvent,
  scene: Scene,
): ToolStep<StrokeState> {
  switch (event.kind) {
    case 'press': {
      const from = worldOf(scene.camera, event.screen)
      return { state: { ...IDLE, pressed: { from, to: from, pointer: event.pointer } }, taken: true }
    }
    case 'drag':
      return { state: moved(state, event.screen, scene) }
    case 'release':
      return released(kind, moved(state, event.screen, scene), scene)
    case 'abandon':
      return { state: IDLE }
    case 'key':
      return keyed(kind, state, event, scene)
    case 'takeBack':
      return takeBack(state, scene)
    default:
      return { state, unused: true }
  }
}

function moved(state: StrokeState, screen: Point, scene: Scene): StrokeState {
  const { pressed } = state
  if (!pressed) return state
  const start = screenOf(scene.camera, pressed.from)
  const isTap = pointDistanceMm(start, screen) <= TAP_SLOP_PX[pressed.pointer]
  return { ...state, pressed: { ...pressed, to: isTap ? pressed.from : worldOf(scene.camera, screen) } }
}

function released(kind: Stroke['kind'], { pressed }: StrokeState, scene: Scene): ToolStep<StrokeState> {
  const fromPx = pressed && aimedPx(pressed.from, scene)
  const toPx = pressed && aimedPx(pressed.to, scene)
  if (!fromPx || !toPx) return { state: IDLE, say: { kind: 'outside-photo' } }
  return stroked({ kind, fromPx, toPx }, scene)
}

const stroked = (stroke: Stroke, { tracing }: Scene): ToolStep<StrokeState> => ({
  state: IDLE,
  trace: [{ kind: 'stroke', stroke }],
  say: { kind: 'stroke-set', number: tracing.strokes.length + 1 },
})

function keyed(
  kind: Stroke['kind'],
  state: StrokeState,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<StrokeState> {
  switch (event.key) {
    case 'Enter':
      return entered(kind, state, event.crosshair, scene)
    case 'Backspace':
    case 'Delete':
      return takeBack(state, scene)
    case 'Escape':
      return state.pressed || state.keyed ? { state: IDLE } : { state, unused: true }
    default:
      return { state, unused: true }
  }
}

/** Enter sets one end at the cross, then the other; where the cross did not move, it takes the outline. */
function entered(
  kind: Stroke['kind'],
  state: StrokeState,
  crosshair: Point | null,
  scene: Scene,
): ToolStep<StrokeState> {
  if (!crosshair) {
    if (state.keyed) return stroked({ kind, fromPx: state.keyed, toPx: state.keyed }, scene)
    const canTake = scene.tracing.outlinePx !== null && !scene.tracing.isFindingOutline
    return canTake ? { state, trace: [{ kind: 'accept-outline' }] } : { state, unused: true }
  }
  const atPx = aimedPx(crosshair, scene)
  if (!atPx) return { state, say: { kind: 'outside-photo' } }
  if (state.keyed) return stroked({ kind, fromPx: state.keyed, toPx: atPx }, scene)
  return { state: { ...IDLE, keyed: atPx }, say: { kind: 'stroke-started' } }
}

function takeBack(state: StrokeState, { tracing }: Scene): ToolStep<StrokeState> {
  if (state.keyed || state.pressed) return { state: IDLE }
  if (tracing.strokes.length === 0) return { state, unused: true }
  return {
    state,
    trace: [{ kind: 'take-back-stroke' }],
    say: { kind: 'stroke-taken-back', left: tracing.strokes.length - 1 },
  }
}
