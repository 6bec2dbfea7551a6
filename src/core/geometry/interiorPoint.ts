import { InvariantError } from '../units'
import { regionBounds } from './bounds'
import { brandedPoint } from './brandedPoint'
import { isPointInRegion } from './isPointInRing'
import { itemAt, itemRound } from './itemAt'
import type { Point } from './point'
import { pointToRingDistanceMm } from './pointDistances'
import type { Region, Ring } from './region'

/** Stop when no place can be more than this share of the best distance better: enough for a label or a seed point. */
const GAIN_WORTH_LOOKING_FOR = 0.02
/** Squares split at each size, the most promising first. Only long strips of one width ever have more. */
const SQUARES_AT_ONCE = 48
/** Halvings of the first squares, whose side is the region's shorter one: down to a 4000th of it. */
const HALVINGS = 12

interface Place {
  readonly at: Point
  /** Distance to the nearest boundary; negative outside. */
  readonly clearMm: number
}

interface Square extends Place {
  readonly halfMm: number
}

/**
 * A point well inside a region: near the centre of about the largest circle that fits.
 * @param region mm
 * @returns a point strictly inside; its distance to the boundary is within 2 % of the greatest possible, unless more
 *   squares stayed promising than are looked at (long strips of one width), where it is still a good one
 * @throws InvariantError when the region has no inside that doubles can hit
 * Method: squares split where the clear distance of their centre + half diagonal beats the best so far, one size after
 * the other; started from the middles of the widest runs along a few lines, which hit thin and bent shapes that squares
 * would miss. At most about 2500 distances to the whole boundary, commonly a hundred.
 */
export function interiorPoint<P extends Point>(region: Region<P>): P {
  let best = runMiddles(region)
    .map((at) => placeAt(region, at))
    .reduce<Place>(clearer, { at: [NaN, NaN], clearMm: 0 })
  if (best.clearMm === 0) throw new InvariantError('a region without inside', { points: region.outer.length })
  let squares = startingSquares(region)
  for (let halving = 0; halving < HALVINGS && squares.length > 0; halving += 1) {
    best = squares.reduce<Place>(clearer, best)
    const worthMm = best.clearMm * (1 + GAIN_WORTH_LOOKING_FOR)
    squares = squares
      .filter((square) => reachMm(square) > worthMm)
      .toSorted((a, b) => reachMm(b) - reachMm(a))
      .slice(0, SQUARES_AT_ONCE)
      .flatMap((square) => quarters(region, square))
  }
  return brandedPoint<P>(best.at[0], best.at[1])
}

const clearer = (best: Place, next: Place): Place => (next.clearMm > best.clearMm ? next : best)

const reachMm = (square: Square): number => square.clearMm + square.halfMm * Math.SQRT2

function placeAt(region: Region, at: Point): Place {
  const distanceMm = [region.outer, ...region.holes].reduce(
    (least, ring) => Math.min(least, pointToRingDistanceMm(at, ring)),
    Infinity,
  )
  return { at, clearMm: isPointInRegion(at, region) ? distanceMm : -distanceMm }
}

const squareAt = (region: Region, x: number, y: number, halfMm: number): Square => ({
  ...placeAt(region, [x, y]),
  halfMm,
})

function startingSquares(region: Region): readonly Square[] {
  const { minX, minY, maxX, maxY } = regionBounds(region)
  // A long thin box would need thousands of squares; 64 along the longer side are a start, quartering does the rest.
  const stepMm = Math.max(Math.min(maxX - minX, maxY - minY), Math.max(maxX - minX, maxY - minY) / 64)
  const squares: Square[] = []
  for (let x = minX; x < maxX; x += stepMm)
    for (let y = minY; y < maxY; y += stepMm)
      squares.push(squareAt(region, x + stepMm / 2, y + stepMm / 2, stepMm / 2))
  return squares
}

function quarters(region: Region, { at: [x, y], halfMm }: Square): readonly Square[] {
  const h = halfMm / 2
  return [
    squareAt(region, x - h, y - h, h),
    squareAt(region, x + h, y - h, h),
    squareAt(region, x - h, y + h, h),
    squareAt(region, x + h, y + h, h),
  ]
}

/** Middles of the widest inside run on level and upright lines that pass no vertex. */
function runMiddles(region: Region): readonly Point[] {
  return ([0, 1] as const).flatMap((axis) =>
    linesBetweenVertices(region, axis).flatMap((level) => {
      const middle = widestRunMiddle(region, axis, level)
      if (middle === null) return []
      const point: Point = axis === 1 ? [middle, level] : [level, middle]
      return [point]
    }),
  )
}

/** Levels halfway between neighbouring vertices' coordinates: the widest gap and up to eight spread over the others. */
function linesBetweenVertices(region: Region, axis: 0 | 1): readonly number[] {
  const values = [...new Set([region.outer, ...region.holes].flat().map((p) => p[axis]))].sort(
    (a, b) => a - b,
  )
  const gaps = values.slice(1).map((value, i) => {
    const before = itemAt(values, i)
    return { widthMm: value - before, level: before + (value - before) / 2 }
  })
  const step = Math.max(1, Math.ceil(gaps.length / 8))
  const widest = gaps.toSorted((a, b) => b.widthMm - a.widthMm).slice(0, 1)
  return [...widest, ...gaps.filter((_, i) => i % step === step >> 1)].map((gap) => gap.level)
}

function widestRunMiddle(region: Region, axis: 0 | 1, level: number): number | null {
  const cuts = [region.outer, ...region.holes]
    .flatMap((ring) => cutsOf(ring, axis, level))
    .sort((a, b) => a - b)
  let best: { readonly widthMm: number; readonly middle: number } | null = null
  for (let i = 0; i + 1 < cuts.length; i += 2) {
    const [from, to] = [itemAt(cuts, i), itemAt(cuts, i + 1)]
    if (best === null || to - from > best.widthMm)
      best = { widthMm: to - from, middle: from + (to - from) / 2 }
  }
  return best === null ? null : best.middle
}

/** Where a ring crosses the line on which coordinate `axis` equals level. */
function cutsOf(ring: Ring, axis: 0 | 1, level: number): readonly number[] {
  const along = axis === 0 ? 1 : 0
  return ring.flatMap((a, i) => {
    const b = itemRound(ring, i + 1)
    if (a[axis] > level === b[axis] > level) return []
    return [a[along] + ((level - a[axis]) / (b[axis] - a[axis])) * (b[along] - a[along])]
  })
}
