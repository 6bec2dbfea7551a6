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
/** A limit for odd shapes (long and of one width); the best place so far is then the answer. */
const CELL_LIMIT = 1500

interface Place {
  readonly at: Point
  /** Distance to the nearest boundary; negative outside. */
  readonly clearMm: number
}

interface Cell extends Place {
  readonly halfMm: number
}

/**
 * A point well inside a region: near the centre of about the largest circle that fits.
 * @param region mm
 * @returns a point strictly inside; its distance to the boundary is within 2 % of the greatest possible, unless the
 *   search met its cell limit (long strips of one width), where it is still a good one
 * @throws InvariantError when the region has no inside that doubles can hit
 * Method: squares split where the clear distance of their centre + half diagonal beats the best so far; started from the
 * middles of the widest runs along a few lines, which hit thin and bent shapes that squares would miss.
 */
export function interiorPoint<P extends Point>(region: Region<P>): P {
  const { minX, minY, maxX, maxY } = regionBounds(region)
  const sideMm = Math.min(maxX - minX, maxY - minY)
  let best = bestOf(runMiddles(region).map((at) => placeAt(region, at)))
  if (best === null) throw new InvariantError('a region without inside', { points: region.outer.length })
  const cells = startingCells(region, sideMm)
  for (let looked = 0; looked < CELL_LIMIT; looked += 1) {
    const cell = takeMostPromising(cells)
    if (cell === null || reachMm(cell) <= best.clearMm * (1 + GAIN_WORTH_LOOKING_FOR)) break
    if (cell.clearMm > best.clearMm) best = cell
    cells.push(...quarters(region, cell))
  }
  return brandedPoint<P>(best.at[0], best.at[1])
}

const reachMm = (cell: Cell): number => cell.clearMm + cell.halfMm * Math.SQRT2

function placeAt(region: Region, at: Point): Place {
  const distanceMm = [region.outer, ...region.holes].reduce(
    (least, ring) => Math.min(least, pointToRingDistanceMm(at, ring)),
    Infinity,
  )
  return { at, clearMm: isPointInRegion(at, region) ? distanceMm : -distanceMm }
}

const cellAt = (region: Region, x: number, y: number, halfMm: number): Cell => ({
  ...placeAt(region, [x, y]),
  halfMm,
})

function startingCells(region: Region, sideMm: number): Cell[] {
  const { minX, minY, maxX, maxY } = regionBounds(region)
  // Long thin boxes would need thousands of squares; 64 along the longer side are a start, quartering does the rest.
  const stepMm = Math.max(sideMm, Math.max(maxX - minX, maxY - minY) / 64)
  const cells: Cell[] = []
  for (let x = minX; x < maxX; x += stepMm)
    for (let y = minY; y < maxY; y += stepMm)
      cells.push(cellAt(region, x + stepMm / 2, y + stepMm / 2, stepMm / 2))
  return cells
}

function takeMostPromising(cells: Cell[]): Cell | null {
  let best = 0
  cells.forEach((cell, i) => {
    if (reachMm(cell) > reachMm(itemAt(cells, best))) best = i
  })
  return cells.splice(best, 1)[0] ?? null
}

function quarters(region: Region, { at: [x, y], halfMm }: Cell): readonly Cell[] {
  const h = halfMm / 2
  return [
    cellAt(region, x - h, y - h, h),
    cellAt(region, x + h, y - h, h),
    cellAt(region, x - h, y + h, h),
    cellAt(region, x + h, y + h, h),
  ]
}

function bestOf(places: readonly Place[]): Place | null {
  return places.reduce<Place | null>(
    (best, place) => (place.clearMm > (best?.clearMm ?? 0) ? place : best),
    null,
  )
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
