import {
  applyIsometryToRing,
  type Isometry,
  isPointInRegion,
  isPointInRing,
  type Point,
  type Region,
  regionsAreaMm2,
  segmentCrossing,
  type Ring,
  ringCentroid,
  slabPoint,
  type SlabPoint,
  subtractRegions,
  type TablePoint,
  tablePoint,
} from '../../src/core/geometry'
import type { RandomSlab } from './randomSlab'

/** Slow, plain ways to what the searches do fast: written apart from them, on points and regions. */

export const slabRegions = (slab: RandomSlab): readonly Region<SlabPoint>[] => [
  { outer: slab.outer, holes: slab.holes },
]

export const tableRing = (lengthMm: number, widthMm: number): Ring<TablePoint> => [
  tablePoint(0, 0),
  tablePoint(lengthMm, 0),
  tablePoint(lengthMm, widthMm),
  tablePoint(0, widthMm),
]

/** Area of an outline at a pose that is not on wood, by the clipping kernel, mm². */
export function offWoodMm2(
  regions: readonly Region<SlabPoint>[],
  outline: Ring<TablePoint>,
  pose: Isometry,
): number {
  const outer = applyIsometryToRing(pose, outline, slabPoint)
  return regionsAreaMm2(subtractRegions([{ outer, holes: [] }], regions))
}

/** Does a whole outline lie on wood? By corners and crossing edges, so that not even a splinter is overlooked. */
export function isOnWood(
  regions: readonly Region<SlabPoint>[],
  outline: Ring<TablePoint>,
  pose: Isometry,
): boolean {
  const ring = applyIsometryToRing(pose, outline, slabPoint)
  const edges = regions
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .flatMap((wood) => wood.map((a, i) => [a, wood[(i + 1) % wood.length] ?? a] as const))
  // A void wholly under the table crosses no side of it.
  if (regions.some(({ holes }) => holes.some(([p]) => p !== undefined && isPointInRing(p, ring))))
    return false
  return ring.every((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a
    const isIn = regions.some((region) => isPointInRegion(a, region))
    return isIn && edges.every(([p, q]) => isApart(a, b, p, q) || segmentCrossing(a, b, p, q) === null)
  })
}

const isApart = (a: Point, b: Point, p: Point, q: Point): boolean =>
  Math.max(a[0], b[0]) < Math.min(p[0], q[0]) ||
  Math.max(p[0], q[0]) < Math.min(a[0], b[0]) ||
  Math.max(a[1], b[1]) < Math.min(p[1], q[1]) ||
  Math.max(p[1], q[1]) < Math.min(a[1], b[1])

/** The outline times a factor, a little smaller about its own middle, with the pose that keeps its middle where it is. */
export function shrunkInPlace(
  outline: Ring<TablePoint>,
  factor: number,
  pose: Isometry,
  by: number,
): { readonly outline: Ring<TablePoint>; readonly pose: Isometry } {
  const [x, y] = ringCentroid(outline)
  const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
  const moved = { xMm: pose.xMm + by * (x * cos - y * sin), yMm: pose.yMm + by * (x * sin + y * cos) }
  return { outline: scaledRing(outline, factor - by), pose: { ...pose, ...moved } }
}

/** Outline times a factor, about the table frame's origin. */
export const scaledRing = (ring: Ring<TablePoint>, factor: number): Ring<TablePoint> =>
  ring.map(([x, y]) => tablePoint(factor * x, factor * y))

interface Turned {
  readonly regions: readonly Region[]
  readonly edges: readonly (readonly [Point, Point])[]
}

function turned(regions: readonly Region[], angleRad: number): Turned {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  const turn = (ring: Ring): Ring => ring.map(([x, y]): Point => [x * cos + y * sin, y * cos - x * sin])
  const placed = regions.map(({ outer, holes }) => ({ outer: turn(outer), holes: holes.map(turn) }))
  const edges = placed
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .flatMap((ring) => ring.map((a, i) => [a, ring[(i + 1) % ring.length] ?? a] as const))
  return { regions: placed, edges }
}

/** Greatest length of whole wood in the strip of a width whose middle line lies at v in the turned frame. */
export function plainRunMm(regions: readonly Region[], angleRad: number, v: number, widthMm: number): number {
  const frame = turned(regions, angleRad)
  const [low, high] = [v - widthMm / 2, v + widthMm / 2]
  const blocked = frame.edges
    .flatMap(([a, b]): readonly (readonly [number, number])[] => {
      if (Math.max(a[1], b[1]) <= low || Math.min(a[1], b[1]) >= high) return []
      const at = (y: number): number =>
        a[1] === b[1] ? a[0] : a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])
      const us = [a, b].map(([x, y]) => (y < low ? at(low) : y > high ? at(high) : x))
      return [[Math.min(...us), Math.max(...us)]]
    })
    .sort((p, q) => p[0] - q[0])
  let best = 0
  let reached = blocked[0]?.[1] ?? 0
  for (const [from, to] of blocked) {
    const isLonger = from - reached > best
    if (isLonger && frame.regions.some((region) => isPointInRegion([(reached + from) / 2, v], region)))
      best = from - reached
    reached = Math.max(reached, to)
  }
  return best
}

/** How far regions reach across a direction. */
export function extentAcross(regions: readonly Region[], angleRad: number): readonly [number, number] {
  const vs = regions.flatMap(({ outer }) =>
    outer.map(([x, y]) => y * Math.cos(angleRad) - x * Math.sin(angleRad)),
  )
  return [Math.min(...vs), Math.max(...vs)]
}

interface GridPose {
  readonly xMm: number
  readonly yMm: number
  readonly angleRad: number
  readonly woodMm2: number
}

/**
 * Wood under a table for every angle and place of a grid, by counting cells whose middle is wood.
 * @returns the best few, in the slab frame (middle of the table)
 */
export function exhaustivePoses(
  regions: readonly Region[],
  size: { readonly lengthMm: number; readonly widthMm: number },
  grid: { readonly cellMm: number; readonly stepRad: number },
): readonly GridPose[] {
  const angles = Math.ceil(Math.PI / grid.stepRad)
  return Array.from({ length: angles }, (_, k) =>
    bestOfAngle(regions, -Math.PI / 2 + ((k + 0.5) * Math.PI) / angles, size, grid.cellMm),
  )
    .sort((p, q) => q.woodMm2 - p.woodMm2)
    .slice(0, 8)
}

function bestOfAngle(
  regions: readonly Region[],
  angleRad: number,
  { lengthMm, widthMm }: { readonly lengthMm: number; readonly widthMm: number },
  cellMm: number,
): GridPose {
  const { edges } = turned(regions, angleRad)
  const xs = edges.map(([a]) => a[0])
  const ys = edges.map(([a]) => a[1])
  const [minU, minV] = [Math.min(...xs), Math.min(...ys)]
  const columns = Math.ceil((Math.max(...xs) - minU) / cellMm)
  const rows = Math.ceil((Math.max(...ys) - minV) / cellMm)
  const sums = new Int32Array((columns + 1) * (rows + 1))
  for (let i = 0; i < columns; i += 1) {
    const u = minU + (i + 0.5) * cellMm
    const crossings = edges
      .filter(([a, b]) => a[0] <= u !== b[0] <= u)
      .map(([a, b]) => (a[1] + ((b[1] - a[1]) * (u - a[0])) / (b[0] - a[0]) - minV) / cellMm)
      .sort((p, q) => p - q)
    let inColumn = 0
    let next = 0
    for (let j = 0; j < rows; j += 1) {
      while (next < crossings.length && (crossings[next] ?? 0) < j + 0.5) next += 1
      inColumn += next % 2
      sums[(i + 1) * (rows + 1) + j + 1] = (sums[i * (rows + 1) + j + 1] ?? 0) + inColumn
    }
  }
  const cells = (value: number, most: number): number => Math.min(most, Math.max(0, Math.round(value)))
  const sum = (i: number, j: number): number => sums[i * (rows + 1) + j] ?? 0
  let best = { i: 0, j: 0, cells: -1 }
  for (let i = 0; i <= columns; i += 1) {
    const from = cells(i - lengthMm / 2 / cellMm, columns)
    const to = cells(i + lengthMm / 2 / cellMm, columns)
    for (let j = 0; j <= rows; j += 1) {
      const low = cells(j - widthMm / 2 / cellMm, rows)
      const high = cells(j + widthMm / 2 / cellMm, rows)
      const count = sum(to, high) - sum(from, high) - sum(to, low) + sum(from, low)
      if (count > best.cells) best = { i, j, cells: count }
    }
  }
  const [u, v] = [minU + best.i * cellMm, minV + best.j * cellMm]
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  return {
    xMm: u * cos - v * sin,
    yMm: u * sin + v * cos,
    angleRad,
    woodMm2: best.cells * cellMm * cellMm,
  }
}

/** The best value near a start, by trying ever smaller steps along each axis and at random. */
export function plainClimb<const N extends readonly number[]>(
  start: N,
  steps: N,
  valueAt: (at: N) => number,
  random: () => number,
): { readonly at: N; readonly value: number } {
  let best = { at: start, value: valueAt(start) }
  let scale = 1
  for (let misses = 0; scale > 1e-5;) {
    const at = best.at.map((x, i) => x + (steps[i] ?? 0) * scale * (2 * random() - 1)) as unknown as N
    const value = valueAt(at)
    if (value > best.value) {
      best = { at, value }
      misses = 0
    } else if (++misses > 16) {
      scale /= 3
      misses = 0
    }
  }
  return best
}
