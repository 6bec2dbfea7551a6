import type { Point, Ring } from '../geometry'

/** An endless straight line through two points; left and right as seen by one who walks from `from` to `to`, y down. */
export interface Line<P extends Point = Point> {
  readonly from: P
  readonly to: P
}

/** A place where a ring changes over from one side of a line to the other. */
export interface Crossing<P extends Point = Point> {
  readonly ring: number
  /** The crossed edge runs from this vertex to the next one. */
  readonly edge: number
  readonly at: P
  /** Distance from the line's `from`, negative before it, mm. */
  readonly alongMm: number
  /** Walking the ring, one comes over to the line's right side here. */
  readonly intoRight: boolean
}

/**
 * Every crossing of the rings with the line, sorted along it. A vertex on the line counts as right, so that no crossing
 * is met twice.
 * @param sides signedDistanceToLineMm of every vertex, ring by ring
 */
export function lineCrossings<P extends Point>(
  rings: readonly Ring<P>[],
  sides: readonly (readonly number[])[],
  line: Line<P>,
): readonly Crossing<P>[] {
  return rings
    .flatMap((ring, index) => ringCrossings(ring, sides[index] ?? [], index, line))
    .sort((a, b) => a.alongMm - b.alongMm)
}

function ringCrossings<P extends Point>(
  ring: Ring<P>,
  sides: readonly number[],
  ringIndex: number,
  { from, to }: Line<P>,
): readonly Crossing<P>[] {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const lengthMm = Math.hypot(dx, dy)
  const found: Crossing<P>[] = []
  for (let edge = 0; edge < ring.length; edge++) {
    const next = (edge + 1) % ring.length
    const [a, b, sideA, sideB] = [ring[edge], ring[next], sides[edge], sides[next]]
    if (a === undefined || b === undefined || sideA === undefined || sideB === undefined) continue
    if (sideA >= 0 === sideB >= 0) continue
    const share = sideA / (sideA - sideB)
    const at: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
    const alongMm = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / lengthMm
    // A point between a and b lies in their plane, so it carries their brand.
    found.push({ ring: ringIndex, edge, at: at as P, alongMm, intoRight: sideB >= 0 })
  }
  return found
}
