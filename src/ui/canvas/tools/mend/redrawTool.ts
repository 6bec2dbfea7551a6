import type { Point } from '../../../../core/geometry'
import { HIT_RADIUS_PX } from '../../hitTest'
import { screenOf } from '../../view'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from '../aim'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { traceUnder } from './traceUnder'

export interface RedrawState {
  /** The trace that is being mended. */
  readonly traceId: string | null
  readonly aiming: Aiming | null
}

const IDLE: RedrawState = { traceId: null, aiming: null }

/**
 * Draws a stretch of a trace anew: from a tap on it to another tap on it, along the edge or straight, with taps between
 * that pin the line.
 */
export const redrawTool: Tool<RedrawState> = {
  idle: IDLE,
  step,
  aim: ({ aiming }) => aiming && aimOf(aiming),
  unfinished: () => [],
}

const isDrawing = ({ tracing }: Scene): boolean => tracing.edge?.meaning === 'redraw'

function step(state: RedrawState, event: ToolEvent, scene: Scene): ToolStep<RedrawState> {
  const { aiming } = state
  switch (event.kind) {
    case 'press':
      return { ...led(state, startAim(event.screen, event.pointer, scene), scene), taken: true }
    case 'drag':
      return aiming ? led(state, moveAim(aiming, event.screen, scene), scene) : { state }
    case 'release':
      return aiming ? setAt(state, moveAim(aiming, event.screen, scene).at, aiming.pointer, scene) : { state }
    case 'abandon':
      return { state: { ...state, aiming: null } }
    case 'takeBack':
      return isDrawing(scene) ? takenBack(state) : { state, unused: true }
    case 'key':
      return keyed(state, event, scene)
    default:
      return { state, unused: true }
  }
}

function led(state: RedrawState, aiming: Aiming, scene: Scene): ToolStep<RedrawState> {
  const at = isDrawing(scene) ? aimedPx(aiming.at, scene) : null
  return { state: { ...state, aiming }, trace: at ? [{ kind: 'lead-edge', at }] : [] }
}

function setAt(before: RedrawState, world: Point, pointer: PointerKind, scene: Scene): ToolStep<RedrawState> {
  const state = { ...before, aiming: null }
  const at = aimedPx(world, scene)
  if (!at) return { state, say: { kind: 'outside-photo' } }
  const trace = traceUnder(scene, screenOf(scene.camera, world), HIT_RADIUS_PX[pointer])
  if (!isDrawing(scene) || state.traceId === null) {
    if (!trace) return { state, say: { kind: 'edge-missed' } }
    return {
      state: { ...state, traceId: trace.id },
      trace: [{ kind: 'start-edge', at, before: [] }],
      say: { kind: 'stretch-begun' },
    }
  }
  if (trace?.id === state.traceId) {
    return { state: IDLE, trace: [{ kind: 'redraw-edge', at, traceId: state.traceId }] }
  }
  return { state, trace: [{ kind: 'pin-edge', at }], say: { kind: 'stretch-pinned' } }
}

function keyed(
  state: RedrawState,
  { key, crosshair }: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<RedrawState> {
  if (key === 'Enter' && crosshair) return setAt(state, crosshair, 'keys', scene)
  if (!isDrawing(scene)) return { state, unused: true }
  if (key === 'Backspace' || key === 'Delete') return takenBack(state)
  if (key !== 'Escape') return { state, unused: true }
  return { state: IDLE, trace: [{ kind: 'drop-edge' }], say: { kind: 'trace-dropped' } }
}

const takenBack = (state: RedrawState): ToolStep<RedrawState> => ({
  state: { ...state, aiming: null },
  trace: [{ kind: 'take-back-edge' }],
  say: { kind: 'stretch-taken-back' },
})
