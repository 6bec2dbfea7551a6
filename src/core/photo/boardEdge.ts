import type { Point } from '../geometry'
import { profileAcross, profileBetween, PROFILE_STEP_PX, steepestRise } from './edgeProfile'
import { type CurvePoint, curveAt, type EdgeCurve, fitCurve, innermostRun } from './fitCurve'
import { type Colour, colourDistance, isInWindow, medianColour, type PixelWindow } from './pixelWindow'

export interface FoundEdge {
  readonly curve: EdgeCurve
  readonly frame: EdgeFrame
}

/** The clicked edge: s runs from −1 at `from` to 1 at `to`, offsets count outwards. */
export interface EdgeFrame {
  readonly from: Point
  readonly to: Point
  readonly outwards: Point
}

const STATIONS = 60
/** Near the corners the neighbouring edge disturbs. */
const END_SHARE = 0.94
const SIDEWAYS_PX = [-2, -1, 0, 1, 2]
const LEAST_STEP = 18
/** An edge inside the strongest one counts when it is this share as strong. */
const STEP_SHARE = 0.35
const LEAST_SHARE = 0.4
const MOST_RMS_PX = 0.8

/**
 * The outline of a board's upper face along one side, to a fraction of a pixel.
 * @param reachPx how far the clicked ends may be off
 * @returns null when no edge runs along most of the side
 * Method: on 60 cuts the steps in colour; the innermost run that most cuts support (its own side face and its shadow
 * lie farther out); a parabola through the sub-pixel places, as the lens may bow it.
 */
export function findBoardEdge(photo: PixelWindow, frame: EdgeFrame, reachPx: number): FoundEdge | null {
  const stations = Array.from(
    { length: STATIONS },
    (_, n) => (END_SHARE * (2 * n - STATIONS + 1)) / (STATIONS - 1),
  )
  const cuts = stations
    .map((s) => ({ s, at: framePoint(frame, s, 0) }))
    .filter(({ at }) => isInWindow(photo, at, reachPx + 4))
    .map(({ s, at }) => ({ s, colours: profileAcross(photo, at, frame.outwards, reachPx + 4, SIDEWAYS_PX) }))
  if (cuts.length < STATIONS / 2) return null
  const run = innermostRun(
    cuts.map(({ s, colours }) => ({ s, offsets: stepOffsets(colours, reachPx + 4) })),
    reachPx,
  )
  if (run === null || run.share < LEAST_SHARE) return null
  const points = cuts.flatMap(({ s, colours }): CurvePoint[] => {
    const rough = (run.from * (1 - s) + run.to * (1 + s)) / 2
    const offset = offsetNear(colours, rough, reachPx + 4)
    return offset === null ? [] : [{ s, offset }]
  })
  const curve = fitCurve(points)
  if (curve === null || curve.rms > MOST_RMS_PX || curve.kept < LEAST_SHARE * STATIONS) return null
  return { curve, frame }
}

/** A place by its run along the edge and its offset outwards. */
export function framePoint({ from, to, outwards }: EdgeFrame, s: number, offset: number): Point {
  const [a, b] = [(1 - s) / 2, (1 + s) / 2]
  return [from[0] * a + to[0] * b + offset * outwards[0], from[1] * a + to[1] * b + offset * outwards[1]]
}

export const edgePoint = ({ curve, frame }: FoundEdge, s: number): Point =>
  framePoint(frame, s, curveAt(curve, s))

const sampleOf = (offset: number, reachPx: number): number => Math.round((offset + reachPx) / PROFILE_STEP_PX)

/** Offsets at which the colour steps, as strong as counts. */
function stepOffsets(colours: readonly Colour[], reachPx: number): readonly number[] {
  const span = Math.round(1.5 / PROFILE_STEP_PX)
  const steps = colours.map((_, i) => {
    const [before, after] = [colours[i - span], colours[i + span]]
    return before && after ? colourDistance(before, after) : 0
  })
  const strongest = Math.max(...steps)
  return steps.flatMap((step, i) => {
    const isPeak = step >= (steps[i - 1] ?? 0) && step > (steps[i + 1] ?? 0)
    const counts = step > LEAST_STEP && step > STEP_SHARE * strongest
    return isPeak && counts ? [i * PROFILE_STEP_PX - reachPx] : []
  })
}

/** The step nearest to a rough offset, between the colours 3 px either side of it. */
function offsetNear(colours: readonly Colour[], rough: number, reachPx: number): number | null {
  const centre = sampleOf(rough, reachPx)
  const part = colours.slice(Math.max(0, centre - 7), centre + 8)
  if (part.length < 15) return null
  const inside = medianColour(part.slice(0, 3))
  const outside = medianColour(part.slice(-3))
  if (colourDistance(inside, outside) < LEAST_STEP) return null
  const sample = steepestRise(profileBetween(part, inside, outside), 0.4)
  return sample === null ? null : (centre - 7 + sample) * PROFILE_STEP_PX - reachPx
}
