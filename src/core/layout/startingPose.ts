import {
  applyIsometry,
  type Isometry,
  type Ring,
  ringBounds,
  ringMoments,
  slabPoint,
  type SlabPoint,
} from '../geometry'
import { finishedRing, type TableOutline } from './finishedRing'

/**
 * A first place for the table: over the slab's middle, along its longest direction.
 * @param outline the slab's outline, mm, positive
 * @returns pose of the table frame in the slab frame; angle within a quarter turn, so that the table is not upside down
 * Method: principal axis of the outline's second moments.
 * Rules: LAY-7.
 */
export function startingPose(outline: Ring<SlabPoint>, table: TableOutline): Isometry {
  const { centroid, aboutXMm4, aboutYMm4, productMm4 } = ringMoments(outline)
  // The axis of least moment: tan 2θ = 2·Ixy / (∫x² − ∫y²).
  const angleRad = 0.5 * Math.atan2(2 * productMm4, aboutYMm4 - aboutXMm4)
  const { minX, minY, maxX, maxY } = ringBounds(finishedRing(table))
  const turn: Isometry = { xMm: 0, yMm: 0, angleRad, turnedOver: false }
  const middle = applyIsometry(turn, [(minX + maxX) / 2, (minY + maxY) / 2], slabPoint)
  return { xMm: centroid[0] - middle[0], yMm: centroid[1] - middle[1], angleRad, turnedOver: false }
}
