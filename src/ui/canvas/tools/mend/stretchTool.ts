import type { Point, PxPoint } from '../../../../core/geometry'
import type { Trace } from '../../../../core/plan'
import { smoothedStretch, straightenedStretch } from '../../../../core/trace'
import { HIT_RADIUS_PX } from '../../hitTest'
import { screenOf } from '../../view'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from '../aim'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { traceUnder } from './traceUnder'

export interface StretchState {
  /** One end of the stretch, on a trace. */
  readonly from: { readonly traceId: string; readonly atPx: PxPoint } | null
  readonly aiming: Aiming | null
}

/** Bends shorter than this on the screen are smoothed away: what looks ragged at this zoom. */
const SMOOTHED_PX = 8

const IDLE: StretchState = { from: null, aiming: null }

/** Smooths a stretch between two taps on a trace, or draws it straight: one step. */
export const stretchTool = (how: 'smooth' | 'straighten'): Tool<StretchState> => ({
  idle: IDLE,
  step: (state, event, scene) => step(how, state, event, scene),
  aim: ({ aiming }) => aiming && aimOf(aiming),
  unfinished: ({ from }) => (from ? [from.atPx] : []),
})

function step(
  how: 'smooth' | 'straighten',
  state: StretchState,
  event: ToolEvent,
  scene: Scene,
): ToolStep<StretchState> {
  const { aiming } = state
  switch (event.kind) {
    case 'press':
      return { state: { ...state, aiming: startAim(event.screen, event.pointer, scene) }, taken: true }
    case 'drag':
      return { state: { ...state, aiming: aiming && moveAim(aiming, event.screen, scene) } }
    case 'release':
      return aiming
        ? setAt(how, state, moveAim(aiming, event.screen, scene).at, aiming.pointer, scene)
        : { state }
    case 'abandon':
      return { state: { ...state, aiming: null } }
    case 'takeBack':
      return state.from ? { state: IDLE } : { state, unused: true }
    case 'key':
      return keyed(how, state, event, scene)
    default:
      return { state, unused: true }
  }
}

function setAt(
  how: 'smooth' | 'straighten',
  { from }: StretchState,
  world: Point,
  pointer: PointerKind,
  scene: Scene,
): ToolStep<StretchState> {
  const trace = traceUnder(scene, screenOf(scene.camera, world), HIT_RADIUS_PX[pointer])
  const atPx = aimedPx(world, scene)
  if (!trace || !atPx || (from && from.traceId !== trace.id)) {
    return { state: { from, aiming: null }, say: { kind: 'edge-missed' } }
  }
  if (from) return mended(how, trace, from.atPx, atPx, scene)
  return { state: { from: { traceId: trace.id, atPx }, aiming: null }, say: { kind: 'stretch-begun' } }
}

function mended(
  how: 'smooth' | 'straighten',
  { id: traceId, ringPx }: Trace,
  fromPx: PxPoint,
  toPx: PxPoint,
  { slab, camera }: Scene,
): ToolStep<StretchState> {
  const ring =
    how === 'smooth'
      ? smoothedStretch(ringPx, fromPx, toPx, SMOOTHED_PX / camera.scale)
      : straightenedStretch(ringPx, fromPx, toPx)
  if (!ring.ok || !slab) return { state: IDLE, say: { kind: 'edge-would-cross' } }
  const args = { slabId: slab.id, traceId, ringPx: ring.value }
  return { state: IDLE, command: { name: 'replaceTraceRing', args }, say: { kind: 'edge-mended' } }
}

function keyed(
  how: 'smooth' | 'straighten',
  state: StretchState,
  { key, crosshair }: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<StretchState> {
  if (key === 'Enter' && crosshair) return setAt(how, state, crosshair, 'keys', scene)
  const isBack = key === 'Escape' || key === 'Backspace' || key === 'Delete'
  return isBack && (state.from || state.aiming) ? { state: IDLE } : { state, unused: true }
}
