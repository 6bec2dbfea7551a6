import { type Point, type PxPoint, pxPoint } from '../../src/core/geometry'
import type { Picture } from '../../src/core/trace'

/** A repeatable number from −1 to 1. */
const noise = (x: number, y: number): number => {
  const value = Math.sin(x * 12.9898 + y * 78.233) * 43758.5453
  return 2 * (value - Math.floor(value)) - 1
}

export interface PaintedSlab {
  readonly picture: Picture
  /** The true edge: where the dark line along the face ends. */
  readonly edgePx: readonly PxPoint[]
  readonly holePx: readonly PxPoint[]
}

/** Half width of the painted slab at a distance along it. */
const halfWidth = (x: number): number => 130 + 12 * Math.sin(x / 37) + 5 * Math.sin(x / 11)

/**
 * A painted slab with wavy long edges, a dark line along them inside the true edge, grain, noise, and one dark hole, on
 * a floor of another colour: a picture whose edge is known to the pixel.
 */
export function paintedSlab(
  floor: readonly [number, number, number] = [120, 122, 126],
  arrisPx = 1.2,
): PaintedSlab {
  const widthPx = 900
  const heightPx = 600
  const rgba = new Uint8Array(widthPx * heightPx * 4).fill(255)
  const from = 120
  const to = 780
  const middle = 300
  const hole: Point = [520, 290]
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      const u = x + 0.5
      const v = y + 0.5
      const beyond = Math.abs(v - middle) - halfWidth(u)
      const isSlab = u > from && u < to && beyond < 0
      const grain = 8 * Math.sin(v / 4 + 2 * Math.sin(u / 90))
      let [red, green, blue]: readonly number[] = floor
      if (isSlab) [red, green, blue] = [178 + grain, 138 + grain, 96 + grain]
      if (isSlab && beyond > -arrisPx) [red, green, blue] = [62, 48, 38]
      if (isSlab && ((u - hole[0]) / 40) ** 2 + ((v - hole[1]) / 18) ** 2 < 1)
        [red, green, blue] = [30, 26, 24]
      const shade = 6 * noise(x, y)
      rgba.set([(red ?? 0) + shade, (green ?? 0) + shade, (blue ?? 0) + shade], (y * widthPx + x) * 4)
    }
  }
  const along = Array.from({ length: to - from + 1 }, (_, n) => from + n)
  return {
    picture: { widthPx, heightPx, rgba },
    edgePx: [
      ...along.map((x) => pxPoint(x, middle - halfWidth(x))),
      ...along.toReversed().map((x) => pxPoint(x, middle + halfWidth(x))),
    ],
    holePx: Array.from({ length: 60 }, (_, n) =>
      pxPoint(hole[0] + 40 * Math.cos((n * Math.PI) / 30), hole[1] + 18 * Math.sin((n * Math.PI) / 30)),
    ),
  }
}
