import { type Point, type PxPoint, pxPoint } from '../geometry'
import { PROFILE_STEP_PX, profileAcross, profileBetween, steepestRise } from './edgeProfile'
import { fitLine, type FittedLine } from './fitLine'
import { type Colour, colourDistance, median, medianColour, type PixelWindow } from './pixelWindow'
import { type RefinedClick, refinedTo, unsure } from './refined'

/** How far a click may be off along the rule and across it, px. */
const END_REACH_PX = 10
const SIDE_REACH_PX = 34
/** Cuts across the body of the rule, this far in from its end, px. */
const BODY_CUTS_PX = [10, 15, 20, 25, 30, 35, 40, 45, 50]
const SIDEWAYS_PX = [-3, -2, -1, 0, 1, 2, 3]
const LEAST_STEP = 40
/** A thumb is not farther off than this, px; an end found beyond it is another thing. */
const MOST_MOVE_PX = 8
const TRIALS_PX = [
  [2.5, 0],
  [-2.5, 0],
  [0, 2.5],
  [0, -2.5],
] as const
const STEADY_PX = 1
/** A rule's side face shows as part of it, so across itself it is not placed better than this. */
const LEAST_SD_PX = 0.5

/**
 * The two ends of a rule, batten or folding rule, each in the middle of its width.
 * @param clicks its two ends, clicked on its axis as well as a thumb can
 * @returns both ends refined, or the click and `sure: false`
 * Method: the rule's two sides on cuts near each end give its axis there; the end is the step in colour along the axis,
 * averaged over the middle of the width so that figures and graduations do not count. Rules: PHO-16.
 */
export function refineRule(
  photo: PixelWindow,
  clicks: readonly [PxPoint, PxPoint],
): readonly [RefinedClick, RefinedClick] {
  return [steadyEnd(photo, clicks[0], clicks[1]), steadyEnd(photo, clicks[1], clicks[0])]
}

/** An end is sure only when clicks a little beside it lead to the same place. */
function steadyEnd(photo: PixelWindow, click: PxPoint, other: PxPoint): RefinedClick {
  const first = refineEnd(photo, click, other)
  if (!first.sure) return first
  const again = TRIALS_PX.map(([dx, dy]) =>
    refineEnd(photo, pxPoint(first.px[0] + dx, first.px[1] + dy), other),
  )
  const steady = again.every(
    (r) => r.sure && Math.hypot(r.px[0] - first.px[0], r.px[1] - first.px[1]) < STEADY_PX,
  )
  return steady ? first : unsure(click)
}

function refineEnd(photo: PixelWindow, click: PxPoint, other: PxPoint): RefinedClick {
  const length = Math.hypot(other[0] - click[0], other[1] - click[1])
  if (length < 100) return unsure(click)
  const inwards: Point = [(other[0] - click[0]) / length, (other[1] - click[1]) / length]
  const body = findBody(photo, click, inwards)
  if (body === null) return unsure(click)
  const { axis, halfWidthPx } = body
  const along: Point =
    axis.along[0] * inwards[0] + axis.along[1] * inwards[1] > 0
      ? axis.along
      : [-axis.along[0], -axis.along[1]]
  const s = (click[0] - axis.at[0]) * along[0] + (click[1] - axis.at[1]) * along[1]
  const foot: Point = [axis.at[0] + s * along[0], axis.at[1] + s * along[1]]
  const offset = endOffset(photo, foot, along, halfWidthPx)
  if (offset === null) return unsure(click)
  const end: Point = [foot[0] + offset * along[0], foot[1] + offset * along[1]]
  if (Math.hypot(end[0] - click[0], end[1] - click[1]) > MOST_MOVE_PX) return unsure(click)
  return refinedTo(end, Math.max(LEAST_SD_PX, (2 * axis.rms) / Math.sqrt(axis.kept)))
}

/** The rule's axis near one end and half its width there. */
function findBody(
  photo: PixelWindow,
  click: Point,
  inwards: Point,
): { axis: FittedLine; halfWidthPx: number } | null {
  const square: Point = [-inwards[1], inwards[0]]
  const cuts = BODY_CUTS_PX.flatMap((s) => {
    const at: Point = [click[0] + s * inwards[0], click[1] + s * inwards[1]]
    const sides = sidesOnCut(profileAcross(photo, at, square, SIDE_REACH_PX, SIDEWAYS_PX))
    return sides ? [{ at, ...sides }] : []
  })
  if (cuts.length < 5) return null
  const widthPx = median(cuts.map((c) => c.right - c.left))
  const alike = cuts.filter((c) => Math.abs(c.right - c.left - widthPx) < 0.15 * widthPx + 1)
  const middles = alike.map(({ at, left, right }): Point => {
    const offset = (left + right) / 2
    return [at[0] + offset * square[0], at[1] + offset * square[1]]
  })
  const axis = fitLine(middles, 0.5)
  return axis !== null && alike.length >= 5 && axis.rms < 1 ? { axis, halfWidthPx: widthPx / 2 } : null
}

/** The strongest opposite pair of steps round the middle of a cut: into the rule and out of it. */
function sidesOnCut(colours: readonly Colour[]): { left: number; right: number } | null {
  const middle = (colours.length - 1) / 2
  const inside = medianColour(colours.slice(middle - 4, middle + 5))
  const left = firstSide(colours.slice(0, middle + 1).reverse(), inside)
  const right = firstSide(colours.slice(middle), inside)
  return left === null || right === null ? null : { left: -left, right }
}

/** How far out the colour has left that of the rule, to a fraction of a pixel. */
function firstSide(outwards: readonly Colour[], inside: Colour): number | null {
  const distances = outwards.map((c) => colourDistance(c, inside))
  // Once it has left it must stay away for 4 px: figures and graduations do not.
  const first = distances.findIndex((_, i) => distances.slice(i, i + 8).every((d) => d > LEAST_STEP))
  const outside = outwards[Math.min(first + 6, outwards.length - 1)]
  if (first < 2 || outside === undefined) return null
  const from = Math.max(0, first - 6)
  const sample = steepestRise(profileBetween(outwards.slice(from, first + 7), inside, outside), 0.4)
  return sample === null ? null : (from + sample) * PROFILE_STEP_PX
}

/** Where along the axis the rule ends, from a point on it; positive is inwards. */
function endOffset(photo: PixelWindow, foot: Point, inwards: Point, halfWidthPx: number): number | null {
  const across = [-0.7, -0.5, -0.3, -0.1, 0.1, 0.3, 0.5, 0.7].map((share) => share * halfWidthPx)
  const outwards: Point = [-inwards[0], -inwards[1]]
  const colours = profileAcross(photo, foot, outwards, END_REACH_PX, across)
  const inside = medianColour(colours.slice(0, 9))
  const outside = medianColour(colours.slice(-9))
  if (colourDistance(inside, outside) < LEAST_STEP) return null
  const sample = steepestRise(profileBetween(colours, inside, outside), 0.5)
  return sample === null ? null : -(sample * PROFILE_STEP_PX - END_REACH_PX)
}
