import type { Bounds, Point } from '../../core/geometry'

/**
 * The camera: where a view's world (photo pixels, or mm of the slab or of the table) lies on the screen.
 * This file is the only one that turns world units into screen pixels and back.
 */
export interface Camera {
  /** Screen px per world unit. */
  readonly scale: number
  /** Screen position of the world's origin, CSS px from the canvas's top-left corner. */
  readonly x: number
  readonly y: number
}

export interface Size {
  readonly width: number
  readonly height: number
}

/** A millimetre or pixel never grows beyond this on screen: any larger and nothing can be told apart. */
const GREATEST_SCALE = 40
const LEAST_SCALE = 0.005

export const screenOf = (camera: Camera, world: Point): Point => [
  camera.x + camera.scale * world[0],
  camera.y + camera.scale * world[1],
]

export const worldOf = (camera: Camera, screen: Point): Point => [
  (screen[0] - camera.x) / camera.scale,
  (screen[1] - camera.y) / camera.scale,
]

/** Length on screen, px, of a length in the world. */
export const screenLength = (camera: Camera, worldLength: number): number => camera.scale * worldLength

/** Length in the world of a length on screen, px. */
export const worldLength = (camera: Camera, screenLengthPx: number): number => screenLengthPx / camera.scale

export const panBy = (camera: Camera, dxPx: number, dyPx: number): Camera => ({
  ...camera,
  x: camera.x + dxPx,
  y: camera.y + dyPx,
})

/** Zooms so that what lies under `about` (screen px) stays under it. */
export function zoomAbout(camera: Camera, about: Point, factor: number): Camera {
  const scale = Math.min(GREATEST_SCALE, Math.max(LEAST_SCALE, camera.scale * factor))
  const world = worldOf(camera, about)
  return { scale, x: about[0] - scale * world[0], y: about[1] - scale * world[1] }
}

/** Kept free of the contents, screen px: tools lie over the upper rim, hints and zoom over the lower one. */
export interface Insets {
  readonly top: number
  readonly bottom: number
  readonly sides: number
}

/**
 * The camera that shows some bounds whole, in the middle of what the insets leave.
 * @param bounds  world units; a flat box is shown as if it were one unit wide
 * @param size    the canvas, CSS px; four fifths of its width and half of its height are used, whatever the insets
 */
export function fitCamera(bounds: Bounds, size: Size, { top, bottom, sides }: Insets): Camera {
  const width = Math.max(1, bounds.maxX - bounds.minX)
  const height = Math.max(1, bounds.maxY - bounds.minY)
  const room = {
    width: Math.max(size.width - 2 * sides, 0.8 * size.width),
    height: Math.max(size.height - top - bottom, size.height / 2),
  }
  const wished = Math.min(room.width / width, room.height / height)
  const scale = Math.min(GREATEST_SCALE, Math.max(LEAST_SCALE, wished))
  const middleY = Math.min(size.height / 2 + (top - bottom) / 2, size.height - room.height / 2)
  return {
    scale,
    x: size.width / 2 - (scale * (bounds.minX + bounds.maxX)) / 2,
    y: middleY - (scale * (bounds.minY + bounds.maxY)) / 2,
  }
}

/** Keeps the middle of the picture in the middle when the canvas changes its size. */
export const resizedCamera = (camera: Camera, from: Size, to: Size): Camera =>
  panBy(camera, (to.width - from.width) / 2, (to.height - from.height) / 2)

/** Moves the picture just so far that a world point is inside the canvas, `marginPx` from its border. */
export function cameraShowing(camera: Camera, world: Point, size: Size, marginPx: number): Camera {
  const [x, y] = screenOf(camera, world)
  const shift = (at: number, length: number) =>
    at < marginPx ? marginPx - at : at > length - marginPx ? length - marginPx - at : 0
  return panBy(camera, shift(x, size.width), shift(y, size.height))
}

/** What of the world is on screen. */
export function visibleBounds(camera: Camera, size: Size): Bounds {
  const [minX, minY] = worldOf(camera, [0, 0])
  const [maxX, maxY] = worldOf(camera, [size.width, size.height])
  return { minX, minY, maxX, maxY }
}

export const isOnScreen = (screen: Point, size: Size): boolean =>
  screen[0] >= 0 && screen[1] >= 0 && screen[0] <= size.width && screen[1] <= size.height
