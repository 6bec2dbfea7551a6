import { type Point, type PxPoint, pxPoint } from '../geometry'
import { PROFILE_STEP_PX, profileAcross } from './edgeProfile'
import { type CurvePoint, curveAt, type EdgeCurve, fitCurve } from './fitCurve'
import { type Colour, colourDistance, isInWindow, median, type PixelWindow } from './pixelWindow'

export interface RefinedLine {
  /** As many points as were clicked, each moved across the line onto it; the clicks when not sure. */
  readonly pointsPx: readonly PxPoint[]
  readonly sure: boolean
  readonly sdPx: number
}

const REACH_PX = 8
const STATIONS = 81
const SIDEWAYS_PX = [-3, -2, -1, 0, 1, 2, 3]
const LEAST_CONTRAST = 8
const MOST_RMS_PX = 0.8
const LEAST_SHARE = 0.5
const LEAST_SD_PX = 0.2
const CLICK_SD_PX = 3

/**
 * A straight line on the slab (chalk line, pencil line, edge of a board or track), clicked at three or more points.
 * @param clicks along the line, in order
 * @returns the points on the line itself, or the clicks and `sure: false`
 * Method: on 81 cuts across the clicked run the strongest thin line, or else the strongest step; a parabola through
 * them with outliers left out (the lens may bow a straight line, so it is not forced straight). Rules: PHO-16.
 */
export function refineLine(photo: PixelWindow, clicks: readonly PxPoint[]): RefinedLine {
  const unsure: RefinedLine = { pointsPx: clicks, sure: false, sdPx: CLICK_SD_PX }
  const frame = lineFrame(clicks)
  if (frame === null) return unsure
  const rough = fitCurve(
    clicks.length >= 5 ? clicks.map((p) => inFrame(frame, p)) : densified(frame, clicks),
    REACH_PX,
  )
  if (rough === null) return unsure
  const curve = lineCurve(photo, frame, rough, 'ridge') ?? lineCurve(photo, frame, rough, 'step')
  if (curve === null) return unsure
  const pointsPx = clicks.map((p) => {
    const { s } = inFrame(frame, p)
    return placeOf(frame, s, curveAt(curve, s))
  })
  return { pointsPx, sure: true, sdPx: Math.max(LEAST_SD_PX, (3 * curve.rms) / Math.sqrt(curve.kept)) }
}

/** The line near the clicked run, as a thin line or as a step; null when most cuts do not show one. */
function lineCurve(
  photo: PixelWindow,
  frame: LineFrame,
  rough: EdgeCurve,
  kind: 'ridge' | 'step',
): EdgeCurve | null {
  const points = Array.from({ length: STATIONS }, (_, n): CurvePoint[] => {
    const s = (2 * n - STATIONS + 1) / (STATIONS - 1)
    const base = curveAt(rough, s)
    const offset = offsetOnCut(photo, frame, s, base, kind)
    return offset === null ? [] : [{ s, offset: base + offset }]
  }).flat()
  const curve = points.length >= LEAST_SHARE * STATIONS ? fitCurve(points) : null
  return curve !== null && curve.rms <= MOST_RMS_PX && curve.kept >= LEAST_SHARE * STATIONS ? curve : null
}

interface LineFrame {
  readonly first: Point
  readonly along: Point
  readonly length: number
}

/** Along the first and last click; null for fewer than three clicks or a run too short to tell a direction. */
function lineFrame(clicks: readonly PxPoint[]): LineFrame | null {
  const first = clicks[0]
  const last = clicks.at(-1)
  if (!first || !last || clicks.length < 3) return null
  const length = Math.hypot(last[0] - first[0], last[1] - first[1])
  return length < 60
    ? null
    : { first, along: [(last[0] - first[0]) / length, (last[1] - first[1]) / length], length }
}

function inFrame({ first, along, length }: LineFrame, [x, y]: Point): CurvePoint {
  const [dx, dy] = [x - first[0], y - first[1]]
  return { s: (2 * (dx * along[0] + dy * along[1])) / length - 1, offset: dy * along[0] - dx * along[1] }
}

function placeOf({ first, along, length }: LineFrame, s: number, offset: number): PxPoint {
  const run = ((s + 1) / 2) * length
  return pxPoint(first[0] + run * along[0] - offset * along[1], first[1] + run * along[1] + offset * along[0])
}

/** Points between few clicks, so that a parabola can be laid through them. */
function densified(frame: LineFrame, clicks: readonly PxPoint[]): readonly CurvePoint[] {
  const placed = clicks.map((p) => inFrame(frame, p))
  return placed.flatMap((p, i) => {
    const q = placed[i + 1]
    return q
      ? [0, 0.25, 0.5, 0.75].map((t) => ({
          s: p.s + t * (q.s - p.s),
          offset: p.offset + t * (q.offset - p.offset),
        }))
      : [p]
  })
}

function offsetOnCut(
  photo: PixelWindow,
  frame: LineFrame,
  s: number,
  base: number,
  kind: 'ridge' | 'step',
): number | null {
  const at = placeOf(frame, s, base)
  if (!isInWindow(photo, at, REACH_PX + 2)) return null
  const square: Point = [-frame.along[1], frame.along[0]]
  const colours = profileAcross(photo, at, square, REACH_PX, SIDEWAYS_PX)
  const sample = kind === 'ridge' ? ridgeSample(colours) : stepSample(colours)
  return sample === null ? null : sample * PROFILE_STEP_PX - REACH_PX
}

/** A thin line: a stretch of a few pixels whose colour stands off that on both sides of it. */
function ridgeSample(colours: readonly Colour[]): number | null {
  const arm = Math.round(2.5 / PROFILE_STEP_PX)
  const heights = colours.map((c, i) => {
    const [before, after] = [colours[i - arm], colours[i + arm]]
    return before && after ? Math.min(colourDistance(c, before), colourDistance(c, after)) : 0
  })
  return centroidOfPeak(heights, arm)
}

function stepSample(colours: readonly Colour[]): number | null {
  const arm = Math.round(1.5 / PROFILE_STEP_PX)
  const steps = colours.map((_, i) => {
    const [before, after] = [colours[i - arm], colours[i + arm]]
    return before && after ? colourDistance(before, after) : 0
  })
  return centroidOfPeak(steps, arm)
}

function centroidOfPeak(heights: readonly number[], arm: number): number | null {
  const highest = Math.max(...heights)
  const floor = median(heights)
  if (highest - floor < LEAST_CONTRAST) return null
  let centre = heights.indexOf(highest)
  for (let pass = 0; pass < 3; pass++) {
    let [moment, weight] = [0, 0]
    heights.forEach((h, i) => {
      const share = Math.max(0, h - floor) * Math.max(0, Math.min(1, arm + 1 - Math.abs(i - centre)))
      moment += share * i
      weight += share
    })
    if (!(weight > 0)) return null
    centre = moment / weight
  }
  return centre
}
