import { InvariantError } from '../units'
import { FIBRE_SATURATION_FRACTION } from './equilibriumMoisture'

const bound = (moistureFraction: number): number =>
  Math.min(FIBRE_SATURATION_FRACTION, Math.max(0, moistureFraction))

/**
 * How much a width changes as the wood dries or takes up water.
 * @param sizeMm             size at the first moisture
 * @param fromFraction       moisture then; above fibre saturation (30 %) nothing moves
 * @param toFraction         moisture later
 * @param shrinkageFraction  green to oven-dry, tangential or radial (species)
 * @returns mm; negative where it shrinks. There and back returns to the same size exactly.
 * @throws InvariantError when the size or the shrinkage is not above zero, or the shrinkage not below a half
 * Method: Wood Handbook eq. 13–3: ΔD = D·(M₂ − M₁) / (30·100/S − 30 + M₁), all in per cent.
 * Rules: WOOD-3.  Check values: wood.json "movement-…".
 */
export function movementMm(
  sizeMm: number,
  fromFraction: number,
  toFraction: number,
  shrinkageFraction: number,
): number {
  if (!(sizeMm > 0 && shrinkageFraction > 0 && shrinkageFraction < 0.5)) {
    throw new InvariantError('movement needs a size and a shrinkage', { sizeMm, shrinkageFraction })
  }
  const from = bound(fromFraction)
  const greenOverShrinkage = FIBRE_SATURATION_FRACTION / shrinkageFraction
  return (sizeMm * (bound(toFraction) - from)) / (greenOverShrinkage - FIBRE_SATURATION_FRACTION + from)
}

/** Least and greatest change that a piece may see: by the place in the tree and the way it is sawn. No source. */
const MOVEMENT_SPREAD = 0.25

/** @returns the band in which the change of one slab is likely to lie: averages of a kind, a quarter either way */
export const movementBandMm = (changeMm: number): readonly [leastMm: number, greatestMm: number] => [
  Math.abs(changeMm) * (1 - MOVEMENT_SPREAD),
  Math.abs(changeMm) * (1 + MOVEMENT_SPREAD),
]

/**
 * Length of a slot in a steel base, so that the screw in it lets the wood move.
 * @param fromFixedMm  across the grain from the screw that is held fast
 * @param changePerMm  greatest change of a mm of width, either way (shrinking and swelling added)
 * @param screwMm      thickness of the screw's shank
 * @returns mm; a mm of play is added (common practice, no source)
 * Rules: WOOD-4.
 */
export const slotLengthMm = (fromFixedMm: number, changePerMm: number, screwMm: number): number =>
  screwMm + Math.abs(fromFixedMm * changePerMm) + 1
