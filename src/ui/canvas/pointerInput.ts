import type { Point } from '../../core/geometry'
import { planStore } from '../../state/planStore'
import { sessionStore } from '../../state/sessionStore'
import { canvasStore, holdStraight, setCrosshair } from './canvasStore'
import { changeCamera } from './currentScene'
import { gestureStep, type GestureEffect, type GestureState, type PointerInput, REST } from './gestures'
import { isSpaceHeld } from './keyInput'
import { sendToTool } from './sendToTool'
import type { PointerKind } from './tools/toolTypes'
import { leadToScreen } from './tracing'
import { panBy, zoomAbout } from './view'

const LEFT_BUTTON = 0
const MIDDLE_BUTTON = 1
/** Zoom of one wheel notch (100 px) is about a sixth; a trackpad's pinch sends small steps and wants more of each. */
const WHEEL_ZOOM = 0.0016
const TRACKPAD_PINCH_ZOOM = 0.01
/** Wheels that count in lines: common practice, no source. */
const WHEEL_LINE_PX = 33

const pointerKind = (event: PointerEvent): PointerKind =>
  event.pointerType === 'touch' ? 'touch' : event.pointerType === 'pen' ? 'pen' : 'mouse'

/**
 * Listens to pointers and the wheel on the canvas host. Moves are gathered and handed on once a frame.
 * @returns stops listening
 */
export function listenToPointers(host: HTMLElement): () => void {
  let gesture: GestureState = REST
  let frame = 0
  const waiting = new Map<number, Point>()

  const placeOf = (event: MouseEvent): Point => {
    const box = host.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }

  const take = (input: PointerInput): void => {
    const step = gestureStep(gesture, input)
    gesture = step.state
    for (const effect of step.effects) {
      if (carryOut(effect) === 'declined') take({ kind: 'declined' })
    }
    canvasStore.setState({
      isPanning: gesture.kind === 'pan' || gesture.kind === 'pinch',
      isTouched: gesture.kind !== 'rest',
    })
  }

  const flush = (): void => {
    cancelAnimationFrame(frame)
    frame = 0
    for (const [id, at] of waiting) take({ kind: 'move', id, at })
    waiting.clear()
  }

  const onDown = (event: PointerEvent): void => {
    if (event.target instanceof Element && event.target.closest('button') !== null) return
    if (event.button !== LEFT_BUTTON && event.button !== MIDDLE_BUTTON) return
    event.preventDefault()
    holdStraight(event.shiftKey)
    host.focus({ preventScroll: true })
    host.setPointerCapture(event.pointerId)
    flush()
    const wantsPan = event.button === MIDDLE_BUTTON || isSpaceHeld()
    take({ kind: 'down', id: event.pointerId, at: placeOf(event), pointer: pointerKind(event), wantsPan })
  }

  const onMove = (event: PointerEvent): void => {
    holdStraight(event.shiftKey)
    // A finger has no place before it comes down.
    if (gesture.kind === 'rest')
      return event.pointerType === 'touch' ? undefined : leadToScreen(placeOf(event))
    waiting.set(event.pointerId, placeOf(event))
    if (frame === 0) frame = requestAnimationFrame(flush)
  }

  const onUp = (event: PointerEvent): void => {
    flush()
    take({ kind: 'up', id: event.pointerId, at: placeOf(event) })
  }

  const onCancel = (event: PointerEvent): void => {
    waiting.delete(event.pointerId)
    flush()
    take({ kind: 'cancel', id: event.pointerId })
  }

  const onWheel = (event: WheelEvent): void => {
    event.preventDefault()
    const dy = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? event.deltaY * WHEEL_LINE_PX : event.deltaY
    const factor = Math.exp(-dy * (event.ctrlKey ? TRACKPAD_PINCH_ZOOM : WHEEL_ZOOM))
    changeCamera((camera) => zoomAbout(camera, placeOf(event), factor))
  }

  // Whatever changes the plan, the tool or the slab under a running gesture ends it: what it holds may be gone.
  const endGesture = (): void => {
    if (gesture.kind === 'tool') sendToTool({ kind: 'abandon' })
  }
  const stopPlan = planStore.subscribe((now, before) => {
    if (now.plan !== before.plan) endGesture()
  })
  const stopSession = sessionStore.subscribe((now, before) => {
    if (now.tool !== before.tool || now.slabId !== before.slabId || now.view !== before.view) {
      endGesture()
      setCrosshair(null)
    }
  })

  const noMenu = (event: Event): void => event.preventDefault()
  host.addEventListener('pointerdown', onDown)
  host.addEventListener('pointermove', onMove)
  host.addEventListener('pointerup', onUp)
  host.addEventListener('pointercancel', onCancel)
  host.addEventListener('wheel', onWheel, { passive: false })
  host.addEventListener('contextmenu', noMenu)
  return () => {
    stopPlan()
    stopSession()
    cancelAnimationFrame(frame)
    host.removeEventListener('pointerdown', onDown)
    host.removeEventListener('pointermove', onMove)
    host.removeEventListener('pointerup', onUp)
    host.removeEventListener('pointercancel', onCancel)
    host.removeEventListener('wheel', onWheel)
    host.removeEventListener('contextmenu', noMenu)
  }
}

function carryOut(effect: GestureEffect): 'declined' | undefined {
  switch (effect.kind) {
    case 'press':
      setCrosshair(null)
      // From here on the view stays put, whatever the gesture does to what is shown.
      changeCamera((camera) => camera)
      return sendToTool(effect).taken ? undefined : 'declined'
    case 'pan':
      changeCamera((camera) => panBy(camera, effect.dxPx, effect.dyPx))
      return undefined
    case 'zoom':
      changeCamera((camera) => zoomAbout(camera, effect.about, effect.factor))
      return undefined
    case 'drag':
    case 'release':
    case 'tap':
    case 'abandon':
      sendToTool(effect)
      return undefined
  }
}
