import { addPoints, type Point } from '../../core/geometry'
import { sessionStore, setTool } from '../../state/sessionStore'
import { canvasStore, holdStraight, setCrosshair } from './canvasStore'
import { changeCamera, currentScene, forgetCamera } from './currentScene'
import { setsPoints } from './handles'
import { sendToTool } from './sendToTool'
import { arrowStep, isArrow } from './tools/nudge'
import type { ArrowKey, ToolKey } from './tools/toolTypes'
import { leadTo } from './tracing'
import { cameraShowing, panBy, worldOf, zoomAbout } from './view'

/** One press of + or −. */
export const ZOOM_STEP = 1.25
/** How far an arrow key moves the picture, screen px. */
const PAN_STEP_PX = 48
/** How far an arrow key moves the cross, photo px: ten, with Shift a hundred, with Alt one. */
const CROSSHAIR_UNIT_PX = 10
/** The cross is kept so far inside the canvas, screen px. */
const CROSSHAIR_MARGIN_PX = 40

const TOOL_KEYS: ReadonlySet<string> = new Set([
  'ArrowLeft',
  'ArrowRight',
  'ArrowUp',
  'ArrowDown',
  'Enter',
  'Escape',
  'Backspace',
  'Delete',
  '[',
  ']',
  'o',
])

const isToolKey = (key: string): key is ToolKey => TOOL_KEYS.has(key)

let spaceHeld = false
export const isSpaceHeld = (): boolean => spaceHeld

/** @returns stops listening */
export function listenToKeys(host: HTMLElement): () => void {
  const onDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.target !== host) return
    if (pressed(event)) event.preventDefault()
  }
  const onUp = (event: KeyboardEvent): void => {
    if (event.key === ' ') spaceHeld = false
    if (isToolKey(event.key)) sendToTool({ kind: 'keyRelease' })
  }
  const onBlur = (): void => {
    spaceHeld = false
    sendToTool({ kind: 'keyRelease' })
  }
  host.addEventListener('keydown', onDown)
  host.addEventListener('keyup', onUp)
  host.addEventListener('blur', onBlur)
  return () => {
    host.removeEventListener('keydown', onDown)
    host.removeEventListener('keyup', onUp)
    host.removeEventListener('blur', onBlur)
  }
}

/** @returns whether the key was of use */
function pressed(event: KeyboardEvent): boolean {
  switch (event.key) {
    case '+':
    case '=':
      zoomBy(ZOOM_STEP)
      return true
    case '-':
      zoomBy(1 / ZOOM_STEP)
      return true
    case '0':
      forgetCamera()
      return true
    case ' ':
      spaceHeld = true
      return true
    default:
      return isToolKey(event.key) && toolKeyPressed(event.key, event)
  }
}

/** About the cross if there is one, else about the middle. */
export function zoomBy(factor: number): void {
  const { crosshair } = canvasStore.getState()
  changeCamera((camera, { width, height }) => {
    const about: Point = [width / 2, height / 2]
    const zoomed = zoomAbout(camera, about, factor)
    return crosshair ? cameraShowing(zoomed, crosshair.world, { width, height }, CROSSHAIR_MARGIN_PX) : zoomed
  })
}

function toolKeyPressed(key: ToolKey, event: KeyboardEvent): boolean {
  const { crosshair } = canvasStore.getState()
  const { shiftKey: shift, altKey: alt } = event
  const fresh = crosshair?.isFresh ? crosshair.world : null
  holdStraight(key === 'Enter' && shift)
  const answer = sendToTool({ kind: 'key', key, shift, alt, crosshair: fresh })
  if (!answer.unused) {
    if (key === 'Enter' && crosshair) setCrosshair({ ...crosshair, isFresh: false })
    return true
  }
  if (isArrow(key)) return moveOn(key, shift, alt)
  return key === 'Escape' && escaped()
}

function moveOn(key: ArrowKey, shift: boolean, alt: boolean): boolean {
  if (setsPoints(sessionStore.getState().tool)) {
    moveCrosshair(arrowStep(key, { shift, alt }, CROSSHAIR_UNIT_PX))
    return true
  }
  const [dx, dy] = arrowStep(key, { shift: false, alt: false }, PAN_STEP_PX)
  changeCamera((camera) => panBy(camera, -dx, -dy))
  return true
}

function moveCrosshair(step: Point): void {
  const scene = currentScene()
  if (!scene.photo || scene.view !== 'photo') return
  const { crosshair } = canvasStore.getState()
  const from = crosshair?.world ?? startOfCrosshair()
  const [x, y] = addPoints(from, step)
  const world: Point = [
    Math.min(scene.photo.widthPx, Math.max(0, x)),
    Math.min(scene.photo.heightPx, Math.max(0, y)),
  ]
  setCrosshair({ world, isFresh: true })
  leadTo(world)
  changeCamera((camera, size) => cameraShowing(camera, world, size, CROSSHAIR_MARGIN_PX))
}

/** The middle of what is on screen, on a whole pixel. */
function startOfCrosshair(): Point {
  const { camera, size } = currentScene()
  const [x, y] = worldOf(camera, [size.width / 2, size.height / 2])
  return [Math.round(x), Math.round(y)]
}

/** Backs out one level: first the cross, then the tool. */
function escaped(): boolean {
  if (canvasStore.getState().crosshair) {
    setCrosshair(null)
    return true
  }
  if (sessionStore.getState().tool === 'select') return false
  setTool('select')
  return true
}
