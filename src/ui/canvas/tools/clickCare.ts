import type { PointerKind, Scene } from './toolTypes'

/**
 * How far off a hand is on the screen, standard deviation, CSS px: common practice, no source. A mouse at the zoom that
 * shows a whole 7 MP photo on a desk's screen comes to the 3 photo px that design and bench call a thumb's error.
 */
const HAND_SD_PX: Readonly<Record<PointerKind, number>> = { mouse: 1, pen: 1, touch: 2, keys: 0.5 }
/** Zoomed in far, the eye and not the hand limits a click; zoomed out far, a loupe or a second look helps. Photo px. */
const LIMITS_PX = { least: 0.5, most: 20 } as const

/** Standard deviation of a point that is set or dragged at this zoom, photo px. */
export const clickSdPx = (pointer: PointerKind, { camera }: Pick<Scene, 'camera'>): number =>
  Math.min(LIMITS_PX.most, Math.max(LIMITS_PX.least, HAND_SD_PX[pointer] / camera.scale))
