/** A tap's own mouse events, which make the click, come so soon after the finger has left, ms. */
const SAME_TAP_MS = 700

let isPressed = false
let liftedAtMs = -Infinity

const onDown = (): void => {
  isPressed = true
}

const onUp = (): void => {
  isPressed = false
  liftedAtMs = performance.now()
}

if (typeof document !== 'undefined') {
  document.addEventListener('pointerdown', onDown, true)
  document.addEventListener('pointerup', onUp, true)
  document.addEventListener('pointercancel', onUp, true)
}

/**
 * Does something now, or once the press that is under way has become a click. What a box does when it is left may move
 * the page; a button under the finger or the mouse must stay where it is until it has been pressed.
 */
export function afterPress(work: () => void): void {
  if (isPressed) document.addEventListener('pointerup', work, { capture: true, once: true })
  else if (performance.now() - liftedAtMs < SAME_TAP_MS) setTimeout(work, 0)
  else work()
}
