import type { PxPoint } from '../../../../core/geometry'
import { aimOf } from '../aim'
import { aimOfGrab, EMPTY_HAND, stepGrab } from '../grab'
import type { Tool, ToolEvent, ToolStep, Scene } from '../toolTypes'
import { stepDrawing } from './drawing'
import { stepFollowing } from './following'
import { stepOpen } from './openTrace'
import type { TraceMeaning, TraceState } from './traceState'

const IDLE: TraceState = { kind: 'open', grab: EMPTY_HAND, aiming: null, dropped: [] }

/**
 * Traces an outline or voids by hand. Taps set points; Enter or a tap on the first point closes the ring. Points of a
 * ring that is there already are dragged; a tap on its edge puts a point in; the delete key takes the selected one out.
 * With the session's wish to follow the edge, the line is led by the tracing worker instead (following.ts).
 */
export const traceTool = (meaning: TraceMeaning): Tool<TraceState> => ({
  idle: IDLE,
  step: (state, event, scene) => stepTrace(meaning, state, event, scene),
  aim: (state) => {
    if (state.aiming) return aimOf(state.aiming)
    return state.kind === 'open' ? aimOfGrab(state.grab) : null
  },
  unfinished: (state) => (state.kind === 'drawing' ? shownPoints(state) : []),
})

function stepTrace(
  meaning: TraceMeaning,
  state: TraceState,
  event: ToolEvent,
  scene: Scene,
): ToolStep<TraceState> {
  if (state.kind === 'open' && scene.tracing.edge?.meaning === meaning)
    return stepFollowing(state, event, scene)
  if (state.kind === 'drawing') return stepDrawing(meaning, state, event, scene)
  const held = stepGrab(state.grab, event, scene)
  if (held) return { ...held, state: { ...state, grab: held.state } }
  return stepOpen(meaning, state, event, scene)
}

/** The points set so far, a dragged one where it is being dragged to. */
const shownPoints = ({ points, dragging }: Extract<TraceState, { kind: 'drawing' }>): readonly PxPoint[] =>
  dragging ? points.with(dragging.index, dragging.drag.atPx) : points
