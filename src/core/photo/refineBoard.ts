import type { Point, PxPoint } from '../geometry'
import { pxPoint } from '../geometry'
import { edgePoint, type FoundEdge, findBoardEdge } from './boardEdge'
import { type FittedLine, meetingPoint } from './fitLine'
import type { PixelWindow } from './pixelWindow'
import { type RefinedClick, refinedTo, unsure } from './refined'
import type { RefinedLine } from './refineLine'

export interface RefinedBoard {
  /** In the order of the clicks. */
  readonly corners: readonly RefinedClick[]
  /** Points along each side that was found: straight edges, which tell the bow of the lens. */
  readonly sides: readonly RefinedLine[]
}

/** A thumb (3 px) may be this far off across an edge. */
const REACH_PX = 9
/** Colour fringes and sharpening shift an edge a little, however well it is fitted. */
const LEAST_SD_PX = 0.12
/** Boards are sawn straight to about this, px. */
const LEAST_SIDE_SD_PX = 0.3
const MOST_MOVE_PX = 14
const POINTS_PER_SIDE = 15

/**
 * Corners of a board's upper face: where its fitted edges meet.
 * @param photo   the photo at full resolution
 * @param clicks  its four corners in order round it, either way
 * @returns each corner refined, or its click and `sure: false`
 * Rules: PHO-16.
 */
export function refineBoard(
  photo: PixelWindow,
  clicks: readonly [PxPoint, PxPoint, PxPoint, PxPoint],
): RefinedBoard {
  let corners: readonly RefinedClick[] = clicks.map((c) => unsure(c))
  let edges: readonly (FoundEdge | null)[] = []
  // The second pass cuts the edges where they are, square to them.
  for (const reachPx of [REACH_PX, REACH_PX / 2]) {
    const at = corners.map((c) => c.px)
    const middle: Point = [meanOf(at, 0), meanOf(at, 1)]
    edges = at.map((from, i) => {
      const to = at[(i + 1) % 4] ?? from
      return findBoardEdge(photo, { from, to, outwards: outwardNormal(from, to, middle) }, reachPx)
    })
    corners = clicks.map((click, i) => cornerOf(click, edges[(i + 3) % 4], edges[i]))
  }
  return {
    corners,
    sides: edges.flatMap((edge) => (edge ? [sidePoints(edge)] : [])),
  }
}

const meanOf = (points: readonly Point[], c: 0 | 1): number =>
  points.reduce((sum, p) => sum + p[c], 0) / points.length

function outwardNormal(from: Point, to: Point, middle: Point): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const normal: Point = [(to[1] - from[1]) / length, (from[0] - to[0]) / length]
  const towardsMiddle = (middle[0] - from[0]) * normal[0] + (middle[1] - from[1]) * normal[1]
  return towardsMiddle > 0 ? [-normal[0], -normal[1]] : normal
}

/** Tangent of an edge at one of its ends. */
function tangent(edge: FoundEdge, end: 1 | -1): FittedLine {
  const [near, far] = [edgePoint(edge, end), edgePoint(edge, end * 0.98)]
  const length = Math.hypot(near[0] - far[0], near[1] - far[1])
  return { at: near, along: [(near[0] - far[0]) / length, (near[1] - far[1]) / length], rms: 0, kept: 2 }
}

function cornerOf(
  click: PxPoint,
  before: FoundEdge | null | undefined,
  after: FoundEdge | null | undefined,
): RefinedClick {
  if (!before || !after) return unsure(click)
  const at = meetingPoint(tangent(before, 1), tangent(after, -1))
  if (at === null || Math.hypot(at[0] - click[0], at[1] - click[1]) > MOST_MOVE_PX) return unsure(click)
  // A parabola's end is three times as uncertain as one of its middle points.
  const spread = Math.max(...[before, after].map((e) => (3 * e.curve.rms) / Math.sqrt(e.curve.kept)))
  return refinedTo(at, Math.max(LEAST_SD_PX, spread))
}

/** Points on the fitted side; each stands for the cuts about it. */
function sidePoints(edge: FoundEdge): RefinedLine {
  const pointsPx = Array.from({ length: POINTS_PER_SIDE }, (_, n) => {
    const [x, y] = edgePoint(edge, (0.94 * (2 * n - POINTS_PER_SIDE + 1)) / (POINTS_PER_SIDE - 1))
    return pxPoint(x, y)
  })
  const spread = edge.curve.rms / Math.sqrt(edge.curve.kept / POINTS_PER_SIDE)
  return { pointsPx, sure: true, sdPx: Math.max(LEAST_SIDE_SD_PX, spread) }
}
