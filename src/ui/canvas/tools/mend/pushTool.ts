import type { Point, PxPoint } from '../../../../core/geometry'
import { pushedRing } from '../../../../core/trace'
import { worldOf } from '../../view'
import { aimedPx } from '../aim'
import type { ToolCommand } from '../toolCommand'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { traceUnder } from './traceUnder'

/** One stroke of the tool under way; null: at rest. */
export type PushState = {
  readonly traceId: string
  readonly ringPx: readonly PxPoint[]
  readonly atPx: PxPoint
  readonly screen: Point
  readonly pointer: PointerKind
} | null

/** One press of a square bracket. */
const SIZE_FACTOR = 1.25

/** Pushes the edge under a round tool along with it: one drag is one step. Square brackets change its size. */
export const pushTool: Tool<PushState> = {
  idle: null,
  step,
  aim: (state) => state && { world: state.atPx, pointerAt: state.screen, pointer: state.pointer },
  unfinished: () => [],
  round: (state) => state?.atPx ?? null,
}

function step(state: PushState, event: ToolEvent, scene: Scene): ToolStep<PushState> {
  switch (event.kind) {
    case 'press':
      return pressed(event, scene)
    case 'drag':
      return state ? pushed(state, event.screen, scene) : { state }
    case 'release':
      return state ? released(state, event.screen, scene) : { state }
    case 'abandon':
      return { state: null, draft: null }
    case 'key':
      return keyed(state, event.key)
    case 'tap':
      return { state, say: { kind: 'edge-missed' } }
    default:
      return { state, unused: true }
  }
}

/** Beside every edge a drag moves the picture. */
function pressed(
  { screen, pointer }: Extract<ToolEvent, { kind: 'press' }>,
  scene: Scene,
): ToolStep<PushState> {
  const trace = traceUnder(scene, screen, scene.pushRadiusPx)
  const atPx = aimedPx(worldOf(scene.camera, screen), scene)
  if (!trace || !atPx) return { state: null, taken: false }
  return { state: { traceId: trace.id, ringPx: trace.ringPx, atPx, screen, pointer }, taken: true }
}

function after(state: NonNullable<PushState>, screen: Point, scene: Scene): NonNullable<PushState> {
  const toPx = aimedPx(worldOf(scene.camera, screen), scene)
  if (!toPx) return state
  const radiusPx = scene.pushRadiusPx / scene.camera.scale
  const ringPx = pushedRing(state.ringPx, { fromPx: state.atPx, toPx, radiusPx })
  return { ...state, ringPx, atPx: toPx, screen }
}

function pushed(before: NonNullable<PushState>, screen: Point, scene: Scene): ToolStep<PushState> {
  const state = after(before, screen, scene)
  return { state, draft: commandOf(state, scene) }
}

function released(before: NonNullable<PushState>, screen: Point, scene: Scene): ToolStep<PushState> {
  const command = commandOf(after(before, screen, scene), scene)
  return command ? { state: null, command, say: { kind: 'edge-mended' } } : { state: null, draft: null }
}

const commandOf = ({ traceId, ringPx }: NonNullable<PushState>, { slab }: Scene): ToolCommand | null =>
  slab && { name: 'replaceTraceRing', args: { slabId: slab.id, traceId, ringPx } }

function keyed(state: PushState, key: Extract<ToolEvent, { kind: 'key' }>['key']): ToolStep<PushState> {
  if (key === '[') return { state, trace: [{ kind: 'push-size', factor: 1 / SIZE_FACTOR }] }
  if (key === ']') return { state, trace: [{ kind: 'push-size', factor: SIZE_FACTOR }] }
  return key === 'Escape' && state ? { state: null, draft: null } : { state, unused: true }
}
