import type { Photo, Slab } from '../../../../core/plan'
import type { Selection } from '../../../../state/sessionStore'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from '../aim'
import { clickSdPx } from '../clickCare'
import { aimOfGrab, EMPTY_HAND, type Grab, grabHandle, stepGrab } from '../grab'
import { hitHandle } from '../../hitTest'
import { handlesOf } from '../../handles'
import { screenOf } from '../../view'
import { stepKey } from '../stepKey'
import type { Handle, PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

export type MarkState =
  { readonly kind: 'hand'; readonly grab: Grab } | { readonly kind: 'aiming'; readonly aiming: Aiming }

const IDLE: MarkState = { kind: 'hand', grab: EMPTY_HAND }
const isMark = (handle: Handle): boolean => handle.kind === 'mark'

/** A tap sets a mark where nothing is; a mark that is there already is dragged. */
export const markTool: Tool<MarkState> = {
  idle: IDLE,
  step: (state, event, scene) =>
    state.kind === 'aiming' ? stepAiming(state.aiming, event, scene) : stepHand(state.grab, event, scene),
  aim: (state) => (state.kind === 'aiming' ? aimOf(state.aiming) : aimOfGrab(state.grab)),
  unfinished: () => [],
}

const inHand = (step: ToolStep<Grab>): ToolStep<MarkState> => ({
  ...step,
  state: { kind: 'hand', grab: step.state },
})

function stepHand(grab: Grab, event: ToolEvent, scene: Scene): ToolStep<MarkState> {
  const held = stepGrab(grab, event, scene)
  if (held) return inHand(held)
  if (event.kind === 'press') {
    const grabbed = grabHandle(scene, event.screen, event.pointer, isMark)
    if (grabbed) return inHand(grabbed)
    const aiming = startAim(event.screen, event.pointer, scene)
    return { state: { kind: 'aiming', aiming }, taken: true }
  }
  if (event.kind !== 'key') return { state: IDLE, unused: true }
  if (event.key === 'Enter' && event.crosshair) return setByKeys(event.crosshair, scene)
  return inHand(stepKey(event, scene))
}

function stepAiming(aiming: Aiming, event: ToolEvent, scene: Scene): ToolStep<MarkState> {
  switch (event.kind) {
    case 'drag':
      return { state: { kind: 'aiming', aiming: moveAim(aiming, event.screen, scene) } }
    case 'release':
      return setMark(moveAim(aiming, event.screen, scene).at, aiming.pointer, scene)
    case 'abandon':
      return { state: IDLE }
    case 'key':
      return event.key === 'Escape' ? { state: IDLE } : { state: { kind: 'aiming', aiming } }
    case 'press':
    case 'tap':
    case 'keyRelease':
    case 'takeBack':
      return { state: { kind: 'aiming', aiming } }
  }
}

function setMark(world: Aiming['at'], pointer: PointerKind, scene: Scene): ToolStep<MarkState> {
  const { slab, photo } = scene
  const atPx = aimedPx(world, scene)
  if (!slab || !photo || !atPx) return { state: IDLE, say: { kind: 'outside-photo' } }
  const markId = nextMarkOn(slab, photo, scene.selection) ?? scene.newId()
  return {
    state: IDLE,
    command: {
      name: 'placeMark',
      args: { slabId: slab.id, photoId: photo.id, markId, atPx, sdPx: clickSdPx(pointer, scene) },
    },
    say: { kind: 'mark-set', markId },
  }
}

/** On a later photo the slab's marks are found again: the chosen one, else the next; null once all are set. */
function nextMarkOn(slab: Slab, photo: Photo, selection: Selection | null): string | null {
  if (slab.capture.kind !== 'photo' || slab.capture.photos[0] === photo) return null
  const left = slab.marks.filter(({ id }) => !photo.observations.some(({ markId }) => markId === id))
  const chosen = selection?.kind === 'mark' ? left.find(({ id }) => id === selection.markId) : undefined
  return (chosen ?? left[0])?.id ?? null
}

/** Enter on a mark selects it, so that the arrow keys move it; elsewhere it sets one. */
function setByKeys(crosshair: Aiming['at'], scene: Scene): ToolStep<MarkState> {
  const screen = screenOf(scene.camera, crosshair)
  const selection = hitHandle(handlesOf(scene), screen, 'keys', isMark)?.selection
  return selection
    ? { state: IDLE, select: selection, say: { kind: 'selected', selection } }
    : setMark(crosshair, 'keys', scene)
}
