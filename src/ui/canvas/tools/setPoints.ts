import type { PxPoint } from '../../../core/geometry'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from './aim'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from './toolTypes'

/** Points set so far, one tap each. */
export interface PointsState {
  readonly points: readonly PxPoint[]
  /** Let go by Escape: undo brings them back. */
  readonly dropped: readonly PxPoint[]
  readonly aiming: Aiming | null
}

export const NO_POINTS: PointsState = { points: [], dropped: [], aiming: null }

/** What a tool does with the points that are tapped one after the other. */
export interface PointsPlan {
  /** Null: these are not enough yet. */
  readonly finished: (
    points: readonly PxPoint[],
    pointer: PointerKind,
    scene: Scene,
  ) => Omit<ToolStep<PointsState>, 'state'> | null
  /** As many points as finish it without being asked; null: Enter finishes it. */
  readonly whenFull: number | null
}

/** The part of a tool that sets points in the photo one by one. */
export function pointsTool(plan: PointsPlan): Tool<PointsState> {
  return {
    idle: NO_POINTS,
    step: (state, event, scene) => step(plan, state, event, scene),
    aim: ({ aiming }) => aiming && aimOf(aiming),
    unfinished: ({ points }) => points,
  }
}

function step(plan: PointsPlan, state: PointsState, event: ToolEvent, scene: Scene): ToolStep<PointsState> {
  const { aiming } = state
  switch (event.kind) {
    case 'press':
      return { state: { ...state, aiming: startAim(event.screen, event.pointer, scene) }, taken: true }
    case 'drag':
      return { state: { ...state, aiming: aiming && moveAim(aiming, event.screen, scene) } }
    case 'release':
      return aiming
        ? withPoint(plan, { ...state, aiming: null }, moveAim(aiming, event.screen, scene), scene)
        : { state }
    case 'abandon':
      return { state: { ...state, aiming: null } }
    case 'key':
      return stepKey(plan, state, event, scene)
    case 'takeBack':
      return takeBack(state)
    default:
      return { state, unused: true }
  }
}

function stepKey(
  plan: PointsPlan,
  state: PointsState,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<PointsState> {
  if (event.key === 'Enter') {
    return event.crosshair
      ? withPoint(plan, state, { at: event.crosshair, pointer: 'keys' }, scene)
      : finish(plan, state, scene)
  }
  if (event.key === 'Backspace' || event.key === 'Delete') return takeBack(state)
  if (event.key !== 'Escape') return { state, unused: true }
  if (state.aiming) return { state: { ...state, aiming: null } }
  if (state.points.length === 0) return { state, unused: true }
  return { state: { ...NO_POINTS, dropped: state.points }, say: { kind: 'trace-dropped' } }
}

function takeBack(state: PointsState): ToolStep<PointsState> {
  if (state.points.length > 0) {
    const points = state.points.slice(0, -1)
    return { state: { ...state, points }, say: { kind: 'point-taken-back', left: points.length } }
  }
  if (state.dropped.length === 0) return { state, unused: true }
  return {
    state: { ...NO_POINTS, points: state.dropped },
    say: { kind: 'point-set', number: state.dropped.length },
  }
}

function finish(plan: PointsPlan, state: PointsState, scene: Scene): ToolStep<PointsState> {
  if (state.points.length === 0) return { state, unused: true }
  const done = plan.finished(state.points, 'mouse', scene)
  if (done) return { state: NO_POINTS, ...done }
  return { state, say: { kind: 'points-missing', placed: state.points.length } }
}

function withPoint(
  plan: PointsPlan,
  state: PointsState,
  { at, pointer }: Pick<Aiming, 'at' | 'pointer'>,
  scene: Scene,
): ToolStep<PointsState> {
  const px = aimedPx(at, scene)
  if (!px) return { state, say: { kind: 'outside-photo' } }
  const points = [...state.points, px]
  const done = points.length === plan.whenFull ? plan.finished(points, pointer, scene) : null
  if (done) return { state: NO_POINTS, ...done }
  return { state: { ...NO_POINTS, points }, say: { kind: 'point-set', number: points.length } }
}
