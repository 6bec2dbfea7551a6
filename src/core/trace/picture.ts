/** Pixels as a canvas gives them: red, green, blue, opacity, row by row. */
export interface Picture {
  readonly widthPx: number
  readonly heightPx: number
  readonly rgba: Uint8Array | Uint8ClampedArray
}

/** Lightness and two colour differences of a picture, one number a pixel each, 0 to 255 or around 0. */
export interface ColourPlanes {
  readonly widthPx: number
  readonly heightPx: number
  /** Photo pixels a side of one of these pixels. */
  readonly factor: number
  readonly planes: readonly [light: Float32Array, redGreen: Float32Array, yellowBlue: Float32Array]
}

/** About a megapixel of a large photo. */
const ROWS_A_SLICE = 64

/**
 * A smaller copy in opponent colours: each pixel the mean of a square of `factor` photo pixels; what is left over at
 * the right and at the bottom is left out. Yields between rows.
 * Differences of the stored (gamma) values: they follow the eye well enough, and any mixture with full covariances
 * learns its own axes.
 */
export function* reducedColours(picture: Picture, factor: number): Generator<void, ColourPlanes> {
  const widthPx = Math.floor(picture.widthPx / factor)
  const heightPx = Math.floor(picture.heightPx / factor)
  const light = new Float32Array(widthPx * heightPx)
  const redGreen = new Float32Array(widthPx * heightPx)
  const yellowBlue = new Float32Array(widthPx * heightPx)
  const { rgba } = picture
  const share = 1 / (factor * factor)
  for (let y = 0; y < heightPx; y++) {
    if (y % ROWS_A_SLICE === 0) yield
    for (let x = 0; x < widthPx; x++) {
      let red = 0
      let green = 0
      let blue = 0
      for (let j = 0; j < factor; j++) {
        let at = ((y * factor + j) * picture.widthPx + x * factor) * 4
        for (let i = 0; i < factor; i++, at += 4) {
          red += rgba[at] ?? 0
          green += rgba[at + 1] ?? 0
          blue += rgba[at + 2] ?? 0
        }
      }
      const out = y * widthPx + x
      light[out] = ((red + green + green + blue) / 4) * share
      redGreen[out] = (red - green) * share
      yellowBlue[out] = ((red + green) / 2 - blue) * share
    }
  }
  return { widthPx, heightPx, factor, planes: [light, redGreen, yellowBlue] }
}
