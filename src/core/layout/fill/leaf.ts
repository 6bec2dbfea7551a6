import { type Region, regionAreaMm2, type SlabPoint, smallestRectangle } from '../../geometry'
import type { FillLimits, FillOffcut } from './fillTask'
import { type OffcutProfile, offcutProfile } from './offcutProfile'

/** Wood that is still to be had: an offcut, or what is left of one. */
export interface Leaf {
  readonly offcutKey: string
  readonly grainRad: number
  readonly region: Region<SlabPoint>
  /** Along the wood and, where it is stout, across it; empty where it is too small to give a piece. */
  readonly profiles: readonly OffcutProfile[]
  /** Directions of its long straight edges, the longest first: sawn, mostly. */
  readonly straight: readonly StraightEdge[]
}

export interface StraightEdge {
  readonly from: SlabPoint
  readonly to: SlabPoint
  readonly lengthMm: number
}

/** Across the wood it is worth cutting where it is not much longer than wide. */
const STOUT = 0.45
const LEAST_STRAIGHT_MM = 60
const MOST_STRAIGHT = 4

export function leafOf(
  { key, grainRad }: Pick<FillOffcut, 'key' | 'grainRad'>,
  region: Region<SlabPoint>,
  limits: FillLimits,
): Leaf {
  const straight = straightEdges(region)
  const { lengthMm, widthMm, angleRad } = smallestRectangle(region.outer)
  const isTooSmall =
    widthMm < limits.leastWidthMm ||
    lengthMm < limits.leastLengthMm ||
    regionAreaMm2(region) <= limits.costPerPieceMm2
  const axes = widthMm > STOUT * lengthMm ? [angleRad, angleRad + Math.PI / 2] : [angleRad]
  return {
    offcutKey: key,
    grainRad,
    region,
    profiles: isTooSmall ? [] : axes.map((axisRad) => offcutProfile(region, axisRad)),
    straight,
  }
}

function straightEdges({ outer }: Region<SlabPoint>): readonly StraightEdge[] {
  return outer
    .map((from, i): StraightEdge => {
      const to = outer[(i + 1) % outer.length] ?? from
      return { from, to, lengthMm: Math.hypot(to[0] - from[0], to[1] - from[1]) }
    })
    .filter(({ lengthMm }) => lengthMm >= LEAST_STRAIGHT_MM)
    .sort((a, b) => b.lengthMm - a.lengthMm)
    .slice(0, MOST_STRAIGHT)
}
