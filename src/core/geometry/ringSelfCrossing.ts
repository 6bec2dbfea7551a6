import { ringBounds } from './bounds'
import { itemAt, itemRound } from './itemAt'
import type { Point } from './point'
import type { Ring } from './region'
import { boxesApart, isPointOnSegment, segmentCrossing } from './segmentCrossing'
import { dotOf, subtractPoints } from './pointArithmetic'
import { turnOf } from './sideOfLine'

/** Two edges of one ring that get in each other's way; edge i runs from vertex i to the next. */
export interface SelfCrossing<P extends Point = Point> {
  /** The lower edge index. */
  readonly a: number
  /** The higher edge index. */
  readonly b: number
  readonly at: P
}

/** An edge of some length; vertices repeated on the spot have been passed over, indices are the given ring's. */
interface Edge<P extends Point> {
  readonly index: number
  readonly from: P
  readonly to: P
}

/**
 * The first place where a ring crosses itself.
 * @param ring open list, mm; repeated points are passed over
 * @returns the crossing of the lowest edge index a, then the lowest b; null when there is none
 *
 * What counts: the ring changing sides of itself, in the middle of two edges or through a vertex; and two edges that run
 * along each other for some length (also a spike that doubles straight back), because no inside can be told there.
 * What does not: touching itself in a point without changing sides, as two tips of a void that just meet.
 * Method: sweep along the longer side of the box, exact side tests (GEO-9). About n·k pair tests, k edges abreast.
 * Rules: GEO-4, GEO-9.
 */
export function ringSelfCrossing<P extends Point>(ring: Ring<P>): SelfCrossing<P> | null {
  const edges = edgesOf(ring)
  if (edges.length < 2) return null
  const axis = longerAxis(ring)
  const least = ({ from, to }: Edge<P>): number => Math.min(from[axis], to[axis])
  const order = edges.map((_, i) => i).sort((i, j) => least(itemAt(edges, i)) - least(itemAt(edges, j)))
  let found: SelfCrossing<P> | null = null
  let abreast: number[] = []
  for (const i of order) {
    const edge = itemAt(edges, i)
    const start = least(edge)
    abreast = abreast.filter((j) => greatest(itemAt(edges, j), axis) >= start)
    for (const j of abreast) {
      const [lower, higher] = i < j ? [i, j] : [j, i]
      if (found !== null && !isBefore(edges, lower, higher, found)) continue
      const at = crossingOf(edges, lower, higher)
      if (at !== null) found = { a: itemAt(edges, lower).index, b: itemAt(edges, higher).index, at }
    }
    abreast.push(i)
  }
  return found
}

function edgesOf<P extends Point>(ring: Ring<P>): readonly Edge<P>[] {
  return ring
    .map((from, index) => ({ index, from, to: itemRound(ring, index + 1) }))
    .filter(({ from, to }) => from[0] !== to[0] || from[1] !== to[1])
}

function longerAxis(ring: Ring): 0 | 1 {
  const { minX, minY, maxX, maxY } = ringBounds(ring)
  return maxX - minX >= maxY - minY ? 0 : 1
}

const greatest = ({ from, to }: Edge<Point>, axis: 0 | 1): number => Math.max(from[axis], to[axis])

function isBefore(
  edges: readonly Edge<Point>[],
  lower: number,
  higher: number,
  found: SelfCrossing,
): boolean {
  const a = itemAt(edges, lower).index
  return a < found.a || (a === found.a && itemAt(edges, higher).index < found.b)
}

/** Where two edges of the ring (positions in the cleaned list) get in each other's way, or null. */
function crossingOf<P extends Point>(edges: readonly Edge<P>[], i: number, j: number): P | null {
  const one = itemAt(edges, i)
  const other = itemAt(edges, j)
  if (boxesApart(one.from, one.to, other.from, other.to)) return null
  const at = segmentCrossing(one.from, one.to, other.from, other.to)
  if (at === null) return null
  const turns = [turnOf(one.from, one.to, other.from), turnOf(one.from, one.to, other.to)]
  if (turns.every((turn) => turn === 0)) return overlapOf(one, other)
  const vertex = touchedVertex(one, other)
  if (vertex === null) return at
  return isChangingSides(strandAt(edges, i, vertex), strandAt(edges, j, vertex), vertex) ? vertex : null
}

/** Two edges on one line: the start of what they share if that has any length, else null. */
function overlapOf<P extends Point>(one: Edge<P>, other: Edge<P>): P | null {
  const ends = [
    ...[other.from, other.to].filter((p) => isPointOnSegment(p, one.from, one.to)),
    ...[one.from, one.to].filter((p) => isPointOnSegment(p, other.from, other.to)),
  ]
  const first = ends[0]
  return first !== undefined && ends.some((p) => !isSamePoint(p, first)) ? first : null
}

/** The end of one edge that lies on the other, if there is one: then they meet there and nowhere else. */
function touchedVertex<P extends Point>(one: Edge<P>, other: Edge<P>): P | null {
  return (
    [other.from, other.to].find((p) => isPointOnSegment(p, one.from, one.to)) ??
    [one.from, one.to].find((p) => isPointOnSegment(p, other.from, other.to)) ??
    null
  )
}

interface Strand {
  readonly before: Point
  readonly after: Point
  /** Positions of the edges that the strand comes in and goes out on. */
  readonly edges: readonly [number, number]
}

/** The piece of the ring that runs through a point of edge i: that edge, or two edges when the point is its end. */
function strandAt(edges: readonly Edge<Point>[], i: number, at: Point): Strand {
  const n = edges.length
  const edge = itemAt(edges, i)
  const previous = (i + n - 1) % n
  const next = (i + 1) % n
  if (isSamePoint(at, edge.from))
    return { before: itemAt(edges, previous).from, after: edge.to, edges: [previous, i] }
  if (isSamePoint(at, edge.to)) return { before: edge.from, after: itemAt(edges, next).to, edges: [i, next] }
  return { before: edge.from, after: edge.to, edges: [i, i] }
}

/** Do two strands through one point swap sides there? Strands that share an edge are one strand, and do not. */
function isChangingSides(one: Strand, other: Strand, at: Point): boolean {
  if (one.edges.some((edge) => other.edges.includes(edge))) return false
  return isRightOf(one, at, other.before) !== isRightOf(one, at, other.after)
}

/** Does p lie to the right of the bend before–at–after? */
function isRightOf({ before, after }: Strand, at: Point, p: Point): boolean {
  const isRightOfFirst = turnOf(before, at, p) > 0
  const isRightOfSecond = turnOf(at, after, p) > 0
  const bend = turnOf(before, at, after)
  const isStraight = bend === 0 && dotOf(subtractPoints(at, before), subtractPoints(after, at)) > 0
  if (isStraight) return isRightOfFirst
  return bend > 0 ? isRightOfFirst && isRightOfSecond : isRightOfFirst || isRightOfSecond
}

const isSamePoint = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1]
