import { type Point, type PxPoint, pxPoint } from '../../../../core/geometry'
import { traceEdgeAt } from '../../bodies'
import { handlesOf, isTraceOpen, tracesOf } from '../../handles'
import { HIT_RADIUS_PX, hitHandle } from '../../hitTest'
import { screenOf, worldOf } from '../../view'
import { type Aiming, aimedPx, moveAim, startAim } from '../aim'
import { EMPTY_HAND, grabHandle } from '../grab'
import { startPointDrag } from '../pointDrag'
import { stepKey } from '../stepKey'
import type { Handle, Scene, ToolEvent, ToolStep } from '../toolTypes'
import { drawingOf, type Open, type TraceMeaning, type TraceState } from './traceState'

const isTracePoint = (handle: Handle): boolean => handle.kind === 'tracePoint'

/** Nothing half drawn. */
export function stepOpen(
  meaning: TraceMeaning,
  state: Open,
  event: ToolEvent,
  scene: Scene,
): ToolStep<TraceState> {
  switch (event.kind) {
    case 'press':
      return pressed(meaning, state, event, scene)
    case 'drag':
    case 'release':
    case 'abandon':
      return state.aiming ? aimed(state, state.aiming, event, scene) : { state }
    case 'key':
      return keyed(meaning, state, event, scene)
    case 'takeBack':
      return broughtBack(state, scene)
    case 'tap':
      return isTakenUp(meaning, scene) ? { state, say: { kind: 'outline-exists' } } : { state, unused: true }
    default:
      return { state, unused: true }
  }
}

/** Goes on with the first point of a ring that is being aimed at. */
function aimed(
  state: Open,
  aiming: Aiming,
  event: Extract<ToolEvent, { kind: 'drag' | 'release' | 'abandon' }>,
  scene: Scene,
): ToolStep<TraceState> {
  if (event.kind === 'abandon') return { state: { ...state, aiming: null } }
  const after = moveAim(aiming, event.screen, scene)
  return event.kind === 'drag' ? { state: { ...state, aiming: after } } : firstPoint(state, after.at, scene)
}

function broughtBack(state: Open, scene: Scene): ToolStep<TraceState> {
  const last = state.dropped.at(-1)
  if (last && scene.followsEdge) return begun(state, last, state.dropped.slice(0, -1))
  return state.dropped.length > 0
    ? { state: drawingOf(state.dropped), say: { kind: 'point-set', number: state.dropped.length } }
    : { state, unused: true }
}

/** The line clings to the edge from here on. */
const begun = (state: Open, at: PxPoint, before: readonly PxPoint[]): ToolStep<TraceState> => ({
  state: { ...state, grab: EMPTY_HAND, aiming: null, dropped: [] },
  trace: [{ kind: 'start-edge', at, before }],
  select: null,
  say: { kind: 'point-set', number: before.length + 1 },
})

/** A slab has one outline: with it there, presses beside it pan. */
const isTakenUp = (meaning: TraceMeaning, scene: Scene): boolean =>
  meaning === 'outline' && tracesOf(scene).some((trace) => trace.meaning.kind === 'outline')

function pressed(
  meaning: TraceMeaning,
  state: Open,
  event: Extract<ToolEvent, { kind: 'press' }>,
  scene: Scene,
): ToolStep<TraceState> {
  const { screen, pointer } = event
  const grabbed = grabHandle(scene, screen, pointer, isTracePoint)
  if (grabbed) return { ...grabbed, state: { ...state, grab: grabbed.state } }
  const edge = edgeAt(screen, HIT_RADIUS_PX[pointer], scene)
  if (edge) return insertAt(edge, worldOf(scene.camera, screen), event, state)
  if (isTakenUp(meaning, scene)) return { state, taken: false }
  return { state: { ...state, aiming: startAim(screen, pointer, scene) }, taken: true }
}

/** The edge of a ring of this tool's kind under a point. */
function edgeAt(screen: Point, reachPx: number, scene: Scene): ReturnType<typeof traceEdgeAt> {
  const hit = traceEdgeAt(scene, screen, reachPx)
  const trace = hit && tracesOf(scene).find(({ id }) => id === hit.traceId)
  return trace && isTraceOpen(trace, scene) ? hit : null
}

/** The new point is in the hand at once: it can be dragged on before it is let go. */
function insertAt(
  edge: { readonly traceId: string; readonly edge: number },
  [x, y]: Point,
  { screen, pointer }: Extract<ToolEvent, { kind: 'press' }>,
  state: Open,
): ToolStep<TraceState> {
  const target = { kind: 'newTracePoint', traceId: edge.traceId, index: edge.edge + 1 } as const
  const drag = startPointDrag(target, pxPoint(x, y), screen, pointer)
  return { state: { ...state, grab: { kind: 'point', drag } }, taken: true }
}

function firstPoint(state: Open, world: Point, scene: Scene): ToolStep<TraceState> {
  const atPx = aimedPx(world, scene)
  if (atPx && scene.followsEdge) return begun(state, atPx, [])
  return atPx
    ? { state: drawingOf([atPx]), select: null, say: { kind: 'point-set', number: 1 } }
    : { state: { ...state, aiming: null }, say: { kind: 'outside-photo' } }
}

function keyed(
  meaning: TraceMeaning,
  state: Open,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<TraceState> {
  if (event.key === 'Escape' && state.aiming) return { state: { ...state, aiming: null } }
  if (event.key === 'Enter' && event.crosshair) return setByKeys(meaning, state, event.crosshair, scene)
  const step = stepKey(event, scene)
  return { ...step, state: { ...state, grab: step.state } }
}

/** Enter on a point selects it, on an edge puts a point in, elsewhere starts a ring. */
function setByKeys(meaning: TraceMeaning, state: Open, crosshair: Point, scene: Scene): ToolStep<TraceState> {
  const screen = screenOf(scene.camera, crosshair)
  const selection = hitHandle(handlesOf(scene), screen, 'keys', isTracePoint)?.selection
  if (selection) return { state, select: selection, say: { kind: 'selected', selection } }
  const edge = edgeAt(screen, HIT_RADIUS_PX.keys, scene)
  const atPx = aimedPx(crosshair, scene)
  if (edge && atPx && scene.slab) {
    const args = { slabId: scene.slab.id, traceId: edge.traceId, index: edge.edge + 1, atPx }
    return {
      state: { ...state, grab: EMPTY_HAND },
      command: { name: 'insertTracePoint', args },
      say: { kind: 'point-added', number: args.index + 1 },
    }
  }
  if (isTakenUp(meaning, scene)) return { state, say: { kind: 'outline-exists' } }
  return firstPoint(state, crosshair, scene)
}
