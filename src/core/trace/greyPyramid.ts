import type { Picture } from './picture'

/** A photo in grey, one pixel for each square of `factor` photo pixels. */
export interface GreyLevel {
  readonly factor: number
  readonly widthPx: number
  readonly heightPx: number
  readonly grey: Uint8Array
}

const MOST_HALVINGS = 4

function greyOf({ widthPx, heightPx, rgba }: Picture): GreyLevel {
  const grey = new Uint8Array(widthPx * heightPx)
  for (let at = 0, from = 0; at < grey.length; at++, from += 4) {
    grey[at] = ((rgba[from] ?? 0) + 2 * (rgba[from + 1] ?? 0) + (rgba[from + 2] ?? 0)) >> 2
  }
  return { factor: 1, widthPx, heightPx, grey }
}

function halved(level: GreyLevel): GreyLevel {
  const widthPx = level.widthPx >> 1
  const heightPx = level.heightPx >> 1
  const grey = new Uint8Array(widthPx * heightPx)
  const { grey: from, widthPx: wide } = level
  for (let y = 0; y < heightPx; y++) {
    let at = 2 * y * wide
    for (let x = 0; x < widthPx; x++, at += 2) {
      const sum = (from[at] ?? 0) + (from[at + 1] ?? 0) + (from[at + wide] ?? 0) + (from[at + wide + 1] ?? 0)
      grey[y * widthPx + x] = (sum + 2) >> 2
    }
  }
  return { factor: level.factor * 2, widthPx, heightPx, grey }
}

/** The photo in grey, whole and at halves of it down to a sixteenth, as long as there are pixels to halve. */
export function greyPyramid(picture: Picture): readonly GreyLevel[] {
  const levels = [greyOf(picture)]
  for (let level = levels[0]; level !== undefined && levels.length <= MOST_HALVINGS; level = levels.at(-1)) {
    if (Math.min(level.widthPx, level.heightPx) < 16) break
    levels.push(halved(level))
  }
  return levels
}
