import { type PixelWindow, median } from './pixelWindow'

export interface PhotoSharpness {
  /** Width over which the clearest edges of the picture rise, px: about 2 for a sharp photo. */
  readonly edgeWidthPx: number
  readonly isBlurred: boolean
}

/** Beyond this a shaken or badly focused hand shows: marks lose their rims. */
const BLURRED_WIDTH_PX = 4
const SAMPLES_PER_SIDE = 24
/** Edges steeper than this over their surroundings are looked at, of 255. */
const LEAST_RISE = 40

/**
 * Whether a photo is shaken or out of focus, from its own clearest edges.
 * @param photo upright, full resolution
 * @returns edge width; `isBlurred` false when there are too few clear edges to tell
 * Method: the picture in 24 × 24 fields; in each the steepest place across and down; the rise there over its slope is
 * the edge's width; the lower quartile counts, because some edges are soft by nature. Rules: PHO-19.
 */
export function photoSharpness(photo: PixelWindow): PhotoSharpness {
  const stepX = Math.floor(photo.widthPx / SAMPLES_PER_SIDE)
  const stepY = Math.floor(photo.heightPx / SAMPLES_PER_SIDE)
  const fields = Array.from({ length: SAMPLES_PER_SIDE ** 2 }, (_, n) => ({
    left: (n % SAMPLES_PER_SIDE) * stepX,
    top: Math.floor(n / SAMPLES_PER_SIDE) * stepY,
    width: stepX,
    height: stepY,
  }))
  // A shaken hand blurs along its own direction only, so the worse of both counts.
  const edgeWidthPx = Math.max(typicalWidth(photo, fields, 1, 0), typicalWidth(photo, fields, 0, 1))
  return { edgeWidthPx, isBlurred: edgeWidthPx > BLURRED_WIDTH_PX }
}

const LEAST_EDGES = 12

/** Width of the clearer half of the edges in one direction; 0 when there are too few to tell. */
function typicalWidth(photo: PixelWindow, fields: readonly Field[], dx: 0 | 1, dy: 0 | 1): number {
  const widths = fields.flatMap((field) => steepestWidth(photo, field, dx, dy) ?? []).sort((a, b) => a - b)
  return widths.length < LEAST_EDGES ? 0 : median(widths.slice(0, Math.ceil(widths.length / 2)))
}

interface Field {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const greyAt = ({ data, widthPx }: PixelWindow, x: number, y: number): number => {
  const p = (y * widthPx + x) * 4
  return ((data[p] ?? 0) + 2 * (data[p + 1] ?? 0) + (data[p + 2] ?? 0)) / 4
}

const REACH = 8

/** Rise over slope at the field's steepest place in one direction; null when nothing there is steep. */
function steepestWidth(photo: PixelWindow, field: Field, dx: 0 | 1, dy: 0 | 1): number | null {
  let steepest = 0
  let at: readonly [number, number] | null = null
  for (let y = field.top + REACH; y < field.top + field.height - REACH; y += 2) {
    for (let x = field.left + REACH; x < field.left + field.width - REACH; x += 2) {
      const slope = Math.abs(greyAt(photo, x + dx, y + dy) - greyAt(photo, x - dx, y - dy)) / 2
      if (slope > steepest) {
        steepest = slope
        at = [x, y]
      }
    }
  }
  if (at === null) return null
  const profile = Array.from({ length: 2 * REACH + 1 }, (_, n) =>
    greyAt(photo, at[0] + (n - REACH) * dx, at[1] + (n - REACH) * dy),
  )
  const rise = monotoneRise(profile, REACH)
  return rise < LEAST_RISE ? null : rise / steepest
}

/** How far the profile goes up (or down) without turning, about its middle; noise of a few steps does not turn it. */
function monotoneRise(profile: readonly number[], middle: number): number {
  const sign = Math.sign((profile[middle + 1] ?? 0) - (profile[middle - 1] ?? 0))
  const reach = (step: 1 | -1): number => {
    let best = profile[middle] ?? 0
    for (let i = middle + step; i >= 0 && i < profile.length; i += step) {
      const value = profile[i] ?? 0
      const gain = (value - best) * sign * step
      if (gain < -6) break
      if (gain > 0) best = value
    }
    return best
  }
  return Math.abs(reach(1) - reach(-1))
}
