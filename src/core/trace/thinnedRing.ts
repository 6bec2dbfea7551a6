import {
  ringAreaMm2,
  ringSelfCrossing,
  simplifyRing,
  type PxPoint,
  type Ring,
  type SlabPoint,
} from '../geometry'

/** Where a place of the photo lies on the slab. */
export type SlabMapping = (place: PxPoint) => SlabPoint

/** What mending did to the area, on the slab: above zero where wood was gained. */
export interface AreaChange {
  readonly beforeMm2: number
  readonly afterMm2: number
  readonly changeMm2: number
}

/**
 * What a change of a line did to the area that it encloses, holes not counted.
 * @param toSlab the photo's own mapping; a side between two points is taken to be straight on the slab
 * Rules: TRC-13.
 */
export function areaChange(before: Ring<PxPoint>, after: Ring<PxPoint>, toSlab: SlabMapping): AreaChange {
  const beforeMm2 = Math.abs(ringAreaMm2(before.map(toSlab)))
  const afterMm2 = Math.abs(ringAreaMm2(after.map(toSlab)))
  return { beforeMm2, afterMm2, changeMm2: afterMm2 - beforeMm2 }
}

export interface ThinnedRing {
  readonly ringPx: Ring<PxPoint>
  readonly area: AreaChange
  /** What was held to: less than what was asked for where that would have made the line cross itself. */
  readonly toleranceMm: number
}

const MOST_HALVINGS = 12

const isKept = (kept: ReadonlySet<SlabPoint>, place: SlabPoint | undefined): boolean =>
  place !== undefined && kept.has(place)

/**
 * Leaves out points that the line does not need.
 * @param ring        photo pixels, not crossing itself
 * @param toleranceMm ≥ 0: on the slab, no point that goes is farther than this from the side that replaces it
 * @returns some of the ring's points, in order, and what that does to the area; never a crossed line
 * @throws InvariantError when the tolerance is negative or not finite
 * Method: Ramer, Douglas and Peucker, in mm on the slab, not in pixels: the far end of a slab has fewer pixels to the mm.
 * Rules: TRC-13.
 */
export function thinnedRing(ring: Ring<PxPoint>, toleranceMm: number, toSlab: SlabMapping): ThinnedRing {
  const onSlab = ring.map(toSlab)
  let heldMm = toleranceMm
  for (let halving = 0; halving < MOST_HALVINGS; halving++, heldMm /= 2) {
    const kept = new Set(simplifyRing(onSlab, heldMm))
    const ringPx = ring.filter((_, n) => isKept(kept, onSlab[n]))
    if (ringSelfCrossing(ringPx) === null)
      return { ringPx, area: areaChange(ring, ringPx, toSlab), toleranceMm: heldMm }
  }
  return { ringPx: ring, area: areaChange(ring, ring, toSlab), toleranceMm: 0 }
}
