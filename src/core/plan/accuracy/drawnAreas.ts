import type { Isometry, Ring, SlabPoint, TablePoint } from '../../geometry'
import { applyIsometry, isPointInRing, segmentCrossing, slabPoint, tablePoint } from '../../geometry'
import { type SlabScale, type ThetaGradient, thetaVariance } from '../../photo'
import type { EdgeStretch } from './edgeStretches'
import { areaGradient } from './slabAccuracy'

/** A stretch of edge, and how far it may move outwards before it leaves the blank. */
export interface BlankStretch {
  readonly stretch: EdgeStretch
  /** Positive inside the blank; negative: it enters the blank after moving inwards by so much. */
  readonly reachMm: number
}

/** Edges further off than this never reach the blank, mm: above any ± of a photo that is of use. */
const FAR_MM = 150

/**
 * The stretches of an edge that bound wood in the blank, or would if the scale were a little different.
 * @param toTable where the edge lies in the table frame
 */
export function blankStretches(
  edge: readonly EdgeStretch[],
  toTable: Isometry,
  blank: Ring<TablePoint>,
): readonly BlankStretch[] {
  return edge.flatMap((stretch) => {
    const at = (offMm: number): TablePoint => applyIsometry(toTable, movedOut(stretch, offMm), tablePoint)
    const isInside = isPointInRing(at(0), blank)
    const alongMm = distanceAlong(at(0), at(isInside ? FAR_MM : -FAR_MM), blank)
    if (isInside) return [{ stretch, reachMm: alongMm ?? FAR_MM }]
    return alongMm === null ? [] : [{ stretch, reachMm: -alongMm }]
  })
}

export const movedOut = ({ middle, outwards }: EdgeStretch, offMm: number): SlabPoint =>
  slabPoint(middle[0] + offMm * outwards[0], middle[1] + offMm * outwards[1])

/** How far along a segment a ring is met first; null: not at all. */
function distanceAlong(from: TablePoint, to: TablePoint, ring: Ring<TablePoint>): number | null {
  const met = ring.flatMap((a, i) => {
    const crossing = segmentCrossing(from, to, a, ring[(i + 1) % ring.length] ?? a)
    return crossing === null ? [] : [Math.hypot(crossing[0] - from[0], crossing[1] - from[1])]
  })
  return met.length === 0 ? null : Math.min(...met)
}

/** Beyond so many deviations a stretch's own border of the blank no longer counts. */
const CERTAIN = 5

/**
 * What moving an edge with θ adds to the area in the blank, mm².
 * @returns a function of θ's deviation from the answer
 * Method: each stretch sweeps its length times its shift, as far as the blank reaches: past the blank's border nothing is
 * gained. So an end that barely reaches the border counts for what it is, not for its slope. Stretches well inside are
 * summed once and for all.
 */
export function sweptArea(
  stretches: readonly BlankStretch[],
  scale: SlabScale,
): (theta: readonly number[]) => number {
  const isNear = ({ stretch, reachMm }: BlankStretch): boolean =>
    Math.abs(reachMm) < CERTAIN * Math.sqrt(thetaVariance(scale, stretch.shift))
  const near = stretches.filter(isNear)
  const inside = stretches.filter((each) => each.reachMm > 0 && !isNear(each))
  const gradient = areaGradient(
    inside.map(({ stretch }) => stretch),
    scale,
  )
  return (theta) =>
    near.reduce(
      (sum, { stretch, reachMm }) =>
        sum + stretch.lengthMm * (Math.min(along(stretch.shift, theta), reachMm) - Math.min(0, reachMm)),
      along(gradient, theta),
    )
}

/** How far a figure with this gradient goes with θ. */
export function along(gradient: ThetaGradient, theta: readonly number[]): number {
  let sum = 0
  for (let k = 0; k < theta.length; k++) sum += (theta[k] ?? 0) * (gradient[k] ?? 0)
  return sum
}
