import type { Point } from '../geometry'
import { type Colour, colourAt, colourDistance, type PixelWindow } from './pixelWindow'

/** Samples along a profile stand this far apart, px. */
export const PROFILE_STEP_PX = 0.5

export interface EdgeHit {
  readonly at: Point
  /** Signed offset along the profile's direction from where it was centred, px. */
  readonly offsetPx: number
  /** Step in colour across the edge, 0 to 441. */
  readonly contrast: number
}

/**
 * Colours along a straight cut through the picture, averaged over some pixels sideways.
 * @param direction unit vector of the cut
 * @param reachPx   how far it goes either way
 * @param sidewaysPx offsets at which it is repeated and averaged
 */
export function profileAcross(
  window: PixelWindow,
  at: Point,
  direction: Point,
  reachPx: number,
  sidewaysPx: readonly number[] = [0],
): readonly Colour[] {
  const count = Math.round(reachPx / PROFILE_STEP_PX)
  return Array.from({ length: 2 * count + 1 }, (_, n): Colour => {
    const s = (n - count) * PROFILE_STEP_PX
    let [red, green, blue] = [0, 0, 0]
    for (const t of sidewaysPx) {
      const c = colourAt(window, [
        at[0] + s * direction[0] - t * direction[1],
        at[1] + s * direction[1] + t * direction[0],
      ])
      red += c[0] / sidewaysPx.length
      green += c[1] / sidewaysPx.length
      blue += c[2] / sidewaysPx.length
    }
    return [red, green, blue]
  })
}

/**
 * The profile as one number: how far the light has gone from that of `inside` (0) to that of `outside` (1).
 * Counted in light, not in stored values: blur mixes light, and in stored values a bright thing would look too large.
 */
export function profileBetween(
  profile: readonly Colour[],
  inside: Colour,
  outside: Colour,
): readonly number[] {
  const [from, to] = [lightOf(inside), lightOf(outside)]
  const axis = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const
  const squared = axis[0] ** 2 + axis[1] ** 2 + axis[2] ** 2
  return profile.map((colour) => {
    const c = lightOf(colour)
    return ((c[0] - from[0]) * axis[0] + (c[1] - from[1]) * axis[1] + (c[2] - from[2]) * axis[2]) / squared
  })
}

/**
 * Stored values are about the square root of light (sRGB: a power of 2.2), and phones sharpen what they store, which
 * makes bright things look too small again. Halfway between both: what either would do wrong is halved.
 */
const LIGHT_POWER = 1.5
const lightOf = ([r, g, b]: Colour): Colour => [r ** LIGHT_POWER, g ** LIGHT_POWER, b ** LIGHT_POWER]

/** Half-width of the stretch whose slopes are averaged to place an edge, in samples: 2.5 px. */
const EDGE_HALF = 5

/**
 * Place of the steepest rise of a profile to a fraction of a sample.
 * @returns sample position, or null when no rise of at least `leastRise` is there
 * Method: centroid of the (positive) slopes round the steepest one: unmoved by even blur.
 */
export function steepestRise(values: readonly number[], leastRise: number): number | null {
  const slopes = values.map((_, i) => ((values[i + 1] ?? 0) - (values[i - 1] ?? 0)) / 2)
  slopes[0] = 0
  slopes[slopes.length - 1] = 0
  let peak = -1
  let steepest = 0
  slopes.forEach((slope, i) => {
    const broad = slope + ((slopes[i - 1] ?? 0) + (slopes[i + 1] ?? 0)) / 2
    if (broad > steepest) {
      steepest = broad
      peak = i
    }
  })
  if (peak < 0) return null
  return riseCentroid(slopes, peak, leastRise)
}

/** Centroid of the rising slopes about a sample, twice, so that the stretch is centred on the edge. */
export function riseCentroid(slopes: readonly number[], peak: number, leastRise: number): number | null {
  let centre = peak
  let rise = 0
  for (let pass = 0; pass < 3; pass++) {
    let moment = 0
    rise = 0
    const from = Math.max(0, Math.ceil(centre - EDGE_HALF))
    for (let i = from; i <= centre + EDGE_HALF && i < slopes.length; i++) {
      const weight = Math.max(0, slopes[i] ?? 0) * Math.min(1, EDGE_HALF + 1 - Math.abs(i - centre))
      moment += weight * i
      rise += weight
    }
    if (!(rise > 0)) return null
    centre = moment / rise
  }
  return rise >= leastRise ? centre : null
}

/**
 * The edge between two known colours along a cut, to a fraction of a pixel; null when there is no clear one.
 * @param direction unit vector from inside to outside
 */
export function edgeBetween(
  window: PixelWindow,
  at: Point,
  direction: Point,
  reachPx: number,
  colours: { readonly inside: Colour; readonly outside: Colour },
): EdgeHit | null {
  const profile = profileAcross(window, at, direction, reachPx, [-0.7, 0, 0.7])
  const sample = steepestRise(profileBetween(profile, colours.inside, colours.outside), 0.5)
  if (sample === null) return null
  const offsetPx = sample * PROFILE_STEP_PX - reachPx
  return {
    at: [at[0] + offsetPx * direction[0], at[1] + offsetPx * direction[1]],
    offsetPx,
    contrast: colourDistance(colours.inside, colours.outside),
  }
}
