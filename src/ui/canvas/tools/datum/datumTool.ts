import type { Point, PxPoint } from '../../../../core/geometry'
import { handlesOf } from '../../handles'
import { hitHandle } from '../../hitTest'
import { screenOf } from '../../view'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from '../aim'
import { aimOfGrab, EMPTY_HAND, type Grab, grabHandle, stepGrab } from '../grab'
import { stepKey } from '../stepKey'
import type { Handle, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

export interface DatumState {
  readonly grab: Grab
  /** The first end of a datum being set where there is none yet. */
  readonly from: PxPoint | null
  readonly aiming: Aiming | null
}

const IDLE: DatumState = { grab: EMPTY_HAND, from: null, aiming: null }
const isDatumEnd = (handle: Handle): boolean => handle.kind === 'datumEnd'

/** Drags the datum's two ends; two taps set it where there is none. */
export const datumTool: Tool<DatumState> = {
  idle: IDLE,
  step,
  aim: ({ grab, aiming }) => (aiming ? aimOf(aiming) : aimOfGrab(grab)),
  unfinished: ({ from }) => (from ? [from] : []),
}

/** Also on a later photo: a slab has its datum on its first. */
const hasDatum = ({ slab, photo }: Scene): boolean =>
  slab?.capture.kind === 'photo' && (slab.capture.datum !== null || slab.capture.photos[0] !== photo)

const inHand = (step: ToolStep<Grab>): ToolStep<DatumState> => ({
  ...step,
  state: { ...IDLE, grab: step.state },
})

function step(state: DatumState, event: ToolEvent, scene: Scene): ToolStep<DatumState> {
  const held = stepGrab(state.grab, event, scene)
  if (held) return inHand(held)
  switch (event.kind) {
    case 'press':
      return pressed(state, event, scene)
    case 'drag':
    case 'release':
    case 'abandon':
      return state.aiming ? aimed(state, state.aiming, event, scene) : { state }
    case 'key':
      return keyed(state, event, scene)
    case 'takeBack':
      return state.from
        ? { state: IDLE, say: { kind: 'point-taken-back', left: 0 } }
        : { state, unused: true }
    default:
      return { state, unused: true }
  }
}

/** Goes on with an end that is being aimed at. */
function aimed(
  state: DatumState,
  aiming: Aiming,
  event: Extract<ToolEvent, { kind: 'drag' | 'release' | 'abandon' }>,
  scene: Scene,
): ToolStep<DatumState> {
  if (event.kind === 'abandon') return { state: { ...state, aiming: null } }
  const after = moveAim(aiming, event.screen, scene)
  return event.kind === 'drag' ? { state: { ...state, aiming: after } } : withEnd(state, after.at, scene)
}

function pressed(
  state: DatumState,
  { screen, pointer }: Extract<ToolEvent, { kind: 'press' }>,
  scene: Scene,
): ToolStep<DatumState> {
  const grabbed = grabHandle(scene, screen, pointer, isDatumEnd)
  if (grabbed) return inHand(grabbed)
  if (hasDatum(scene)) return { state, taken: false }
  return { state: { ...state, aiming: startAim(screen, pointer, scene) }, taken: true }
}

function keyed(
  state: DatumState,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<DatumState> {
  if (event.key === 'Enter' && event.crosshair) return setByKeys(state, event.crosshair, scene)
  if (state.aiming && event.key === 'Escape') return { state: { ...state, aiming: null } }
  if (state.from && (event.key === 'Escape' || event.key === 'Backspace')) {
    return { state: IDLE, say: { kind: 'point-taken-back', left: 0 } }
  }
  return inHand(stepKey(event, scene))
}

function setByKeys(state: DatumState, crosshair: Point, scene: Scene): ToolStep<DatumState> {
  const screen = screenOf(scene.camera, crosshair)
  const selection = hitHandle(handlesOf(scene), screen, 'keys', isDatumEnd)?.selection
  if (selection) return { state: IDLE, select: selection, say: { kind: 'selected', selection } }
  return hasDatum(scene) ? { state, unused: true } : withEnd(state, crosshair, scene)
}

function withEnd(state: DatumState, world: Point, scene: Scene): ToolStep<DatumState> {
  const { slab, photo } = scene
  const atPx = aimedPx(world, scene)
  if (!slab || !photo || !atPx) return { state: { ...state, aiming: null }, say: { kind: 'outside-photo' } }
  if (!state.from) return { state: { ...IDLE, from: atPx }, say: { kind: 'datum-started' } }
  return {
    state: IDLE,
    command: {
      name: 'setDatum',
      args: { slabId: slab.id, photoId: photo.id, fromPx: state.from, toPx: atPx },
    },
    say: { kind: 'datum-set' },
  }
}
