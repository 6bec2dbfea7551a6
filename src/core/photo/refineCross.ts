import type { Point, PxPoint } from '../geometry'
import { edgeBetween } from './edgeProfile'
import { fitLine, type FittedLine, meetingPoint } from './fitLine'
import { growRegion, pixelIndex } from './growRegion'
import {
  type Colour,
  colourAt,
  colourDistance,
  medianColour,
  type PixelWindow,
  windowAround,
} from './pixelWindow'
import { type RefinedClick, refinedTo, unsure } from './refined'

const WINDOW_HALVES_PX = [80, 160, 320]
/** The click itself, then farther and farther off it: a slip of the thumb may miss the tape. */
const SEED_OFFSETS: readonly Point[] = [0, 4, 9, 14].flatMap((radius): Point[] =>
  radius === 0
    ? [[0, 0]]
    : [0, 1, 2, 3, 4, 5].map((n): Point => [
        radius * Math.cos((n * Math.PI) / 3 + radius),
        radius * Math.sin((n * Math.PI) / 3 + radius),
      ]),
)
const NEIGHBOURS: readonly Point[] = [
  [0, 0],
  [1.3, 0],
  [-1.3, 0],
  [0, 1.3],
  [0, -1.3],
]
const LEAST_CONTRAST = 25
/** Stations tried along each arm, from outside the crossing to short of its (ragged) end. */
const STATIONS = 14
const END_SHARE = 0.85
/** Fewer midpoints than this on a strip, or a worse fit, and the cross is not sure. */
const LEAST_MIDPOINTS = 9
const MOST_RMS_PX = 1
/** The crossing may stand this far from the click, px: more, and another thing was meant. */
const MOST_MOVE_PX = 20
/** Strips are torn and laid by hand: their axes are not better than this. */
const LEAST_SD_PX = 0.15

interface Patch {
  readonly window: PixelWindow
  readonly mask: Uint8Array
  readonly colour: Colour
}

/**
 * Where the axes of the two strips of a taped cross meet.
 * @param photo the photo at full resolution, or a part of it with 320 px round the click
 * @returns the meeting point, or the click and `sure: false`
 * Method: patch of the tape's colour; its two longest chords through the click; edges of each strip on cuts square to
 * it, outside of the crossing; the axis is the line through the midpoints (edge to edge), the ends not used.
 * Rules: PHO-16.
 */
export function refineCross(photo: PixelWindow, click: PxPoint): RefinedClick {
  for (const half of WINDOW_HALVES_PX) {
    const window = windowAround(photo, click, half)
    if (window.widthPx < 20 || window.heightPx < 20) continue
    for (const offset of SEED_OFFSETS) {
      const start: Point = [click[0] + offset[0], click[1] + offset[1]]
      const refined = refineFrom(window, start)
      if (refined && Math.hypot(refined.px[0] - click[0], refined.px[1] - click[1]) < MOST_MOVE_PX)
        return refined
    }
  }
  return unsure(click)
}

function refineFrom(window: PixelWindow, start: Point): RefinedClick | null {
  const colour = medianColour(NEIGHBOURS.map(([dx, dy]) => colourAt(window, [start[0] + dx, start[1] + dy])))
  const region = growRegion(window, start, colour)
  if (!region) return null
  const patch: Patch = { window, mask: region.mask, colour }
  let centre = start
  let strips: readonly FittedLine[] = []
  for (let round = 0; round < 3; round++) {
    const directions = strips.length === 2 ? strips.map((s) => s.along) : stripDirections(patch, centre)
    const [first, second] = directions
    if (!first || !second) return null
    const fitted = [stripAxis(patch, centre, first, second), stripAxis(patch, centre, second, first)]
    strips = fitted.flatMap((f) => (f ? [f] : []))
    const [a, b] = strips
    const meeting = a && b ? meetingPoint(a, b) : null
    if (!meeting) return null
    centre = meeting
  }
  if (strips.some((s) => s.rms > MOST_RMS_PX || s.kept < LEAST_MIDPOINTS)) return null
  const spread = Math.max(...strips.map((s) => (2 * s.rms) / Math.sqrt(s.kept)))
  return refinedTo(centre, Math.max(LEAST_SD_PX, spread))
}

/** How far the patch reaches from a point in a direction, px. */
function reachOf({ window, mask }: Patch, from: Point, [dx, dy]: Point): number {
  let last = 0
  for (let s = 0; s < window.widthPx + window.heightPx; s += 0.5) {
    const index = pixelIndex(window, [from[0] + s * dx, from[1] + s * dy])
    if (index < 0) return s
    if (mask[index] === 1) last = s
    // A pixel or two of dirt do not end an arm.
    else if (s - last > 2) break
  }
  return last
}

const CHORD_ANGLES = 120
/** Directions of the two longest chords through a point that are not of one strip. */
function stripDirections(patch: Patch, centre: Point): readonly Point[] {
  const chords = Array.from({ length: CHORD_ANGLES }, (_, n) => {
    const angle = (Math.PI * n) / CHORD_ANGLES
    const along: Point = [Math.cos(angle), Math.sin(angle)]
    const there = reachOf(patch, centre, along)
    const back = reachOf(patch, centre, [-along[0], -along[1]])
    return { n, along, lengthPx: Math.min(there, back) }
  })
  // Smoothed over ±4.5°: the longest single chords run into a strip's corners, off its axis.
  const smooth = chords.map((chord) => ({
    ...chord,
    lengthPx: [-3, -2, -1, 0, 1, 2, 3].reduce(
      (sum, d) => sum + (chords[(chord.n + d + CHORD_ANGLES) % CHORD_ANGLES]?.lengthPx ?? 0),
      0,
    ),
  }))
  const peaks = smooth
    .filter((c) =>
      [1, 2, 3, 4, 5].every((d) => beats(c.lengthPx, smooth, c.n + d) && beats(c.lengthPx, smooth, c.n - d)),
    )
    .sort((p, q) => q.lengthPx - p.lengthPx)
  return peaks.slice(0, 2).map((p) => p.along)
}

const beats = (lengthPx: number, chords: readonly { readonly lengthPx: number }[], n: number): boolean =>
  lengthPx >= (chords[(n + CHORD_ANGLES) % CHORD_ANGLES]?.lengthPx ?? 0)

function stripAxis(patch: Patch, centre: Point, along: Point, other: Point): FittedLine | null {
  const square: Point = [-along[1], along[0]]
  const sine = Math.abs(along[0] * other[1] - along[1] * other[0])
  if (sine < 0.2) return null
  const endPx =
    END_SHARE * Math.min(reachOf(patch, centre, along), reachOf(patch, centre, [-along[0], -along[1]]))
  // The other strip's width along this one, guessed from the patch between the arms, then 3 px clear of it.
  const cosine = Math.abs(along[0] * other[0] + along[1] * other[1])
  const halfPx = stripHalfWidth(patch, centre, along, endPx)
  const otherHalfPx = stripHalfWidth(patch, centre, other, endPx)
  const startPx = (otherHalfPx + halfPx * cosine) / sine + 3
  if (!(endPx - startPx > 6)) return null
  const midpoints: Point[] = []
  for (let n = 0; n < STATIONS; n++) {
    const s = startPx + ((endPx - startPx) * (n + 0.5)) / STATIONS
    for (const sign of [-1, 1]) {
      const at: Point = [centre[0] + sign * s * along[0], centre[1] + sign * s * along[1]]
      const midpoint = midpointOfStrip(patch, at, square)
      if (midpoint) midpoints.push(midpoint)
    }
  }
  return fitLine(midpoints)
}

/** Half the strip's width near the far part of its arms, px. */
function stripHalfWidth(patch: Patch, centre: Point, along: Point, endPx: number): number {
  const square: Point = [-along[1], along[0]]
  const widths = [-0.9, -0.8, 0.8, 0.9].map((share) => {
    const at: Point = [centre[0] + share * endPx * along[0], centre[1] + share * endPx * along[1]]
    return (reachOf(patch, at, square) + reachOf(patch, at, [-square[0], -square[1]])) / 2
  })
  return Math.min(...widths)
}

function midpointOfStrip(patch: Patch, at: Point, square: Point): Point | null {
  const one = edgeFrom(patch, at, square)
  const two = edgeFrom(patch, at, [-square[0], -square[1]])
  return one && two ? [(one[0] + two[0]) / 2, (one[1] + two[1]) / 2] : null
}

const EDGE_REACH_PX = 4.5

function edgeFrom(patch: Patch, at: Point, outwards: Point): Point | null {
  const reach = reachOf(patch, at, outwards)
  if (reach < 1.5) return null
  const rough: Point = [at[0] + reach * outwards[0], at[1] + reach * outwards[1]]
  const beyond = (s: number): Colour =>
    colourAt(patch.window, [rough[0] + s * outwards[0], rough[1] + s * outwards[1]])
  const inside = medianColour([beyond(-4), beyond(-3.3), beyond(-2.6)])
  const outside = medianColour([beyond(4.5), beyond(3.8), beyond(3.1)])
  if (colourDistance(inside, outside) < LEAST_CONTRAST) return null
  return edgeBetween(patch.window, rough, outwards, EDGE_REACH_PX, { inside, outside })?.at ?? null
}
