import { type Point, pointDistanceMm, type PxPoint } from '../../../../core/geometry'
import { HIT_RADIUS_PX } from '../../hitTest'
import { screenOf } from '../../view'
import { type Aiming, aimedPx, moveAim, startAim } from '../aim'
import { EMPTY_HAND } from '../grab'
import type { PointerKind, Scene, ToolEvent, ToolStep } from '../toolTypes'
import type { Open, TraceState } from './traceState'

/** A line shorter than this on the screen is not closed by a tap on its first point: that is where it just began. */
const LEAST_LINE_PX = 60

const open = (state: Open, aiming: Aiming | null): Open => ({ ...state, grab: EMPTY_HAND, aiming })

/** A line that clings to the edge is being drawn: presses lead it, letting go pins it. */
export function stepFollowing(state: Open, event: ToolEvent, scene: Scene): ToolStep<TraceState> {
  switch (event.kind) {
    case 'press': {
      const aiming = startAim(event.screen, event.pointer, scene)
      return { ...led(state, aiming, scene), taken: true }
    }
    case 'drag':
      return state.aiming ? led(state, moveAim(state.aiming, event.screen, scene), scene) : { state }
    case 'release':
      return state.aiming ? released(state, moveAim(state.aiming, event.screen, scene), scene) : { state }
    case 'abandon':
      return { state: open(state, null) }
    case 'key':
      return keyed(state, event, scene)
    case 'takeBack':
      return takeBack(state)
    default:
      return { state, unused: true }
  }
}

function led(state: Open, aiming: Aiming, scene: Scene): ToolStep<TraceState> {
  const at = aimedPx(aiming.at, scene)
  return { state: open(state, aiming), trace: at ? [{ kind: 'lead-edge', at }] : [] }
}

const released = (state: Open, aiming: Aiming, scene: Scene): ToolStep<TraceState> =>
  setAt(open(state, null), aiming.at, aiming.pointer, scene)

/** Closes the line on its first point, pins it elsewhere. */
function setAt(state: Open, world: Point, pointer: PointerKind, scene: Scene): ToolStep<TraceState> {
  const at = aimedPx(world, scene)
  if (!at) return { state, say: { kind: 'outside-photo' } }
  if (isOnFirst(world, pointer, scene)) return { state, trace: [{ kind: 'close-edge' }] }
  return { state, trace: [{ kind: 'pin-edge', at }], say: { kind: 'stretch-pinned' } }
}

function isOnFirst(world: Point, pointer: PointerKind, scene: Scene): boolean {
  const line = scene.tracing.edge?.acceptedPx ?? []
  const [first] = line
  if (!first || lengthPx(line) * scene.camera.scale < LEAST_LINE_PX) return false
  const apart = pointDistanceMm(screenOf(scene.camera, first), screenOf(scene.camera, world))
  return apart <= HIT_RADIUS_PX[pointer]
}

const lengthPx = (line: readonly PxPoint[]): number =>
  line.reduce((sum, point, n) => sum + pointDistanceMm(point, line[n - 1] ?? point), 0)

function keyed(state: Open, event: Extract<ToolEvent, { kind: 'key' }>, scene: Scene): ToolStep<TraceState> {
  switch (event.key) {
    case 'Enter':
      return event.crosshair
        ? setAt(state, event.crosshair, 'keys', scene)
        : { state, trace: [{ kind: 'close-edge' }] }
    case 'Backspace':
    case 'Delete':
      return takeBack(state)
    case 'Escape':
      if (state.aiming) return { state: open(state, null) }
      return {
        state: { ...open(state, null), dropped: scene.tracing.edge?.acceptedPx ?? [] },
        trace: [{ kind: 'drop-edge' }],
        say: { kind: 'trace-dropped' },
      }
    default:
      return { state, unused: true }
  }
}

const takeBack = (state: Open): ToolStep<TraceState> => ({
  state: open(state, null),
  trace: [{ kind: 'take-back-edge' }],
  say: { kind: 'stretch-taken-back' },
})
