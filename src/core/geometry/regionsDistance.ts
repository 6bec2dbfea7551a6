import { InvariantError } from '../units'
import type { Bounds } from './bounds'
import { isPointInRegion } from './isPointInRing'
import { itemAt, itemRound } from './itemAt'
import type { Point } from './point'
import { pointToSegmentDistanceMm } from './pointDistances'
import type { Region, Ring } from './region'
import { segmentCrossing } from './segmentCrossing'

type Segment = readonly [from: Point, to: Point]

/** Edges in the ring's order, halved again and again; each half knows its box. */
interface BoxTree {
  readonly box: Bounds
  /** A leaf's edges; a branch has none. */
  readonly edges: readonly Segment[]
  readonly halves: readonly BoxTree[]
}

const EDGES_PER_LEAF = 8

/**
 * Least distance between two faces.
 * @param a,b regions, mm; each list needs at least one
 * @returns mm; 0 when they overlap, touch, or one lies in the other; a part lying free in the other's hole has a distance
 * @throws InvariantError when a list is empty
 * Method: boxes of halved edge lists rule out most pairs (branch and bound); what is left is measured end against edge.
 * Whether edges meet is tested exactly (GEO-9).
 */
export function regionsDistanceMm(a: readonly Region[], b: readonly Region[]): number {
  const [treesA, treesB] = [treesOf(a), treesOf(b)]
  if (treesA.length === 0 || treesB.length === 0) throw new InvariantError('no distance to nothing')
  if (isAnyWithin(a, b) || isAnyWithin(b, a)) return 0
  let leastMm = Infinity
  for (const treeA of treesA)
    for (const treeB of treesB) leastMm = Math.min(leastMm, treesDistanceMm(treeA, treeB, leastMm))
  return leastMm
}

/** Without crossing boundaries a part lies either wholly within the other face or wholly outside: one point tells. */
const isAnyWithin = (parts: readonly Region[], face: readonly Region[]): boolean =>
  parts.some((part) => face.some((region) => isPointInRegion(itemAt(part.outer, 0), region)))

const treesOf = (regions: readonly Region[]): readonly BoxTree[] =>
  regions.flatMap((region) => [region.outer, ...region.holes]).map((ring) => treeOf(segmentsOf(ring)))

const segmentsOf = (ring: Ring): readonly Segment[] => ring.map((from, i) => [from, itemRound(ring, i + 1)])

function treeOf(edges: readonly Segment[]): BoxTree {
  if (edges.length <= EDGES_PER_LEAF) return { box: boxOfEdges(edges), edges, halves: [] }
  const middle = edges.length >> 1
  const halves = [treeOf(edges.slice(0, middle)), treeOf(edges.slice(middle))]
  return { box: boxOfBoxes(halves.map((half) => half.box)), edges: [], halves }
}

const boxOfEdges = (edges: readonly Segment[]): Bounds =>
  boxOfBoxes(
    edges.map(([[x0, y0], [x1, y1]]) => ({
      minX: Math.min(x0, x1),
      minY: Math.min(y0, y1),
      maxX: Math.max(x0, x1),
      maxY: Math.max(y0, y1),
    })),
  )

const boxOfBoxes = (boxes: readonly Bounds[]): Bounds => ({
  minX: Math.min(...boxes.map((box) => box.minX)),
  minY: Math.min(...boxes.map((box) => box.minY)),
  maxX: Math.max(...boxes.map((box) => box.maxX)),
  maxY: Math.max(...boxes.map((box) => box.maxY)),
})

const boxesDistanceMm = (a: Bounds, b: Bounds): number =>
  Math.hypot(Math.max(0, a.minX - b.maxX, b.minX - a.maxX), Math.max(0, a.minY - b.maxY, b.minY - a.maxY))

/** The lesser of the trees' distance and the given bound. */
function treesDistanceMm(a: BoxTree, b: BoxTree, boundMm: number): number {
  if (boxesDistanceMm(a.box, b.box) >= boundMm) return boundMm
  const pairs = pairsOf(a, b)
  if (pairs.length === 0) return Math.min(boundMm, leavesDistanceMm(a, b))
  return pairs
    .map(([x, y]) => ({ x, y, nearMm: boxesDistanceMm(x.box, y.box) }))
    .sort((p, q) => p.nearMm - q.nearMm)
    .reduce((leastMm, { x, y }) => treesDistanceMm(x, y, leastMm), boundMm)
}

/** Two branches are opened together, a branch against a leaf alone; two leaves give no pairs. */
function pairsOf(a: BoxTree, b: BoxTree): readonly (readonly [BoxTree, BoxTree])[] {
  if (a.halves.length === 0 && b.halves.length === 0) return []
  const partsA = a.halves.length === 0 ? [a] : a.halves
  const partsB = b.halves.length === 0 ? [b] : b.halves
  return partsA.flatMap((x) => partsB.map((y) => [x, y] as const))
}

function leavesDistanceMm(a: BoxTree, b: BoxTree): number {
  let leastMm = Infinity
  for (const one of a.edges)
    for (const other of b.edges) leastMm = Math.min(leastMm, segmentsDistanceMm(one, other))
  return leastMm
}

function segmentsDistanceMm([a, b]: Segment, [c, d]: Segment): number {
  if (segmentCrossing(a, b, c, d) !== null) return 0
  return Math.min(
    pointToSegmentDistanceMm(a, c, d),
    pointToSegmentDistanceMm(b, c, d),
    pointToSegmentDistanceMm(c, a, b),
    pointToSegmentDistanceMm(d, a, b),
  )
}
