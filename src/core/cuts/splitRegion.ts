import {
  isPointInRing,
  JOIN_TOLERANCE_MM,
  type Point,
  type Region,
  type Ring,
  ringAreaMm2,
  signedDistanceToLineMm,
} from '../geometry'
import { type Crossing, type Line, lineCrossings } from './lineCrossings'
import { splitRegionByKernel } from './splitRegionByKernel'

export interface SplitRegion<P extends Point> {
  readonly left: readonly Region<P>[]
  readonly right: readonly Region<P>[]
  /** Where the line enters and leaves the face, in walking order: distances from the line's `from`, mm. */
  readonly crossingsMm: readonly number[]
}

/**
 * The parts of a face on either side of a line.
 * @param region one connected face, mm
 * @param line   two different points, mm
 * @returns faces on the left and on the right; together they have the region's area
 * Method: every ring is cut where it changes side; the crossings, sorted along the line, bound its stretches inside the
 * wood in pairs, and a chain that leaves at one end of a stretch goes on at the other. Where touching outlines make a
 * pair disagree, the clipping kernel decides instead.
 * Rules: CUT-1, CUT-2.
 */
export function splitRegion<P extends Point>(region: Region<P>, line: Line<P>): SplitRegion<P> {
  const rings = [region.outer, ...region.holes]
  const sides = rings.map((ring) => ring.map((point) => signedDistanceToLineMm(point, line.from, line.to)))
  const crossings = inStretchOrder(lineCrossings(rings, sides, line))
  const crossingsMm = crossings.map((crossing) => crossing.alongMm)
  if (crossings.length === 0) {
    const onRight = (sides[0]?.[0] ?? 0) >= 0
    return { left: onRight ? [] : [region], right: onRight ? [region] : [], crossingsMm }
  }
  if (!pairsAgree(crossings)) return { ...splitRegionByKernel(region, line), crossingsMm }
  const looseHoles = (right: boolean): readonly Ring<P>[] =>
    region.holes.filter((_, index) => (sides[index + 1] ?? []).every((side) => side >= 0 === right))
  return {
    left: withHoles(closedChains(rings, crossings, false), looseHoles(false)),
    right: withHoles(closedChains(rings, crossings, true), looseHoles(true)),
    crossingsMm,
  }
}

/**
 * Crossings in the order in which they bound the wood: by the sign rule of rings, walking along the line one meets an
 * outline that goes over to the left where the line enters wood, and one that comes back where it leaves it. At a
 * vertex on the line both crossings lie at one place, and sorting alone cannot tell which comes first.
 */
function inStretchOrder<P extends Point>(sorted: readonly Crossing<P>[]): readonly Crossing<P>[] {
  const ordered = [...sorted]
  for (let index = 0; index + 1 < ordered.length; index++) {
    const [here, next] = [ordered[index], ordered[index + 1]]
    if (here === undefined || next === undefined || here.intoRight === (index % 2 === 1)) continue
    if (next.alongMm - here.alongMm > JOIN_TOLERANCE_MM) continue
    ordered[index] = next
    ordered[index + 1] = here
  }
  return ordered
}

function pairsAgree(crossings: readonly Crossing[]): boolean {
  return (
    crossings.length % 2 === 0 && crossings.every(({ intoRight }, index) => intoRight === (index % 2 === 1))
  )
}

function withHoles<P extends Point>(
  outers: readonly Ring<P>[],
  holes: readonly Ring<P>[],
): readonly Region<P>[] {
  return outers
    .filter((outer) => ringAreaMm2(outer) > 0)
    .map((outer) => ({
      outer,
      holes: holes.filter((hole) => hole[0] !== undefined && isPointInRing(hole[0], outer)),
    }))
}

function closedChains<P extends Point>(
  rings: readonly Ring<P>[],
  crossings: readonly Crossing<P>[],
  right: boolean,
): readonly Ring<P>[] {
  const indexOf = new Map(crossings.map(({ ring, edge }, index) => [`${ring}/${edge}`, index]))
  const unused = new Set(crossings.flatMap(({ intoRight }, index) => (intoRight === right ? [index] : [])))
  const closed: Ring<P>[] = []
  for (const start of unused) {
    const chain: P[] = []
    let current = start
    while (unused.delete(current)) {
      const end = followRing(rings, crossings, current, indexOf, chain)
      // The other end of the same inside stretch: 0 and 1, 2 and 3, …
      current = end % 2 === 0 ? end + 1 : end - 1
    }
    closed.push(chain)
  }
  return closed
}

/** Walks the ring from one crossing to the next on it, both included, appending to `chain`. */
function followRing<P extends Point>(
  rings: readonly Ring<P>[],
  crossings: readonly Crossing<P>[],
  start: number,
  indexOf: ReadonlyMap<string, number>,
  chain: P[],
): number {
  const from = crossings[start]
  const ring = from === undefined ? [] : (rings[from.ring] ?? [])
  if (from === undefined) return start
  chain.push(from.at)
  for (let step = 1; step <= ring.length; step++) {
    const vertex = (from.edge + step) % ring.length
    const point = ring[vertex]
    if (point !== undefined) chain.push(point)
    const end = indexOf.get(`${from.ring}/${vertex}`)
    const crossing = end === undefined ? undefined : crossings[end]
    if (end === undefined || crossing === undefined) continue
    chain.push(crossing.at)
    return end
  }
  return start
}
