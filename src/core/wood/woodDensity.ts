import { InvariantError } from '../units'
import { FIBRE_SATURATION_FRACTION } from './equilibriumMoisture'
import type { Species } from './species'

const WATER_KG_PER_M3 = 1000
/** Moisture at which the gravities of table 5–3 are given. */
const DRY_BASIS_FRACTION = 0.12

/** Shrinkage in volume from green down to a moisture: S₀·(1 − M/30 %), eq. 4–9. */
const shrunk = (volumetricFraction: number, moistureFraction: number): number =>
  volumetricFraction * (1 - Math.min(1, moistureFraction / FIBRE_SATURATION_FRACTION))

/**
 * Oven-dry mass over the volume at a moisture, relative to water.
 * @throws InvariantError when the moisture is negative or not finite
 * Method: Wood Handbook eqs. 4–7 and 4–9: G_M = G_green / (1 − S_M), S_M = S₀·(1 − M/30).
 * Rules: WOOD-5.
 */
export function gravityAt(
  {
    gravity,
    gravityBasis,
    volumetricFraction,
  }: Pick<Species, 'gravity' | 'gravityBasis' | 'volumetricFraction'>,
  moistureFraction: number,
): number {
  if (!(moistureFraction >= 0 && Number.isFinite(moistureFraction)))
    throw new InvariantError('moisture is a share', { moistureFraction })
  const volumetric = volumetricFraction.value
  const green =
    gravityBasis === 'green' ? gravity.value : gravity.value * (1 - shrunk(volumetric, DRY_BASIS_FRACTION))
  return green / (1 - shrunk(volumetric, moistureFraction))
}

/**
 * Density with the water in it.
 * @returns kg/m³: 1000·G_M·(1 + M); slabs of one kind differ by a tenth and more
 * Method: Wood Handbook eq. 4–12.
 * Rules: WOOD-5.  Check values: wood.json "density-…".
 */
export const densityKgPerM3 = (gravity: number, moistureFraction: number): number =>
  WATER_KG_PER_M3 * gravity * (1 + moistureFraction)

/**
 * Heat that wood lets through across the grain.
 * @param gravity           oven-dry mass over volume at that moisture (or green: a few per cent less), > 0.3
 * @param moistureFraction  below 0.25
 * @returns W/mK, ±20 %
 * Method: Wood Handbook eq. 4–15: G·(0.1941 + 0.004064·M[%]) + 0.01864.
 * Rules: WOOD-6.  Check values: wood.json "conductivity-…".
 */
export const conductivityWPerMK = (gravity: number, moistureFraction: number): number =>
  gravity * (0.1941 + 0.4064 * moistureFraction) + 0.01864
