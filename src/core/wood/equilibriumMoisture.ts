import { InvariantError } from '../units'

/** Water beyond which neither size nor this equation goes: fibre saturation, Wood Handbook ch. 4 and 13. */
export const FIBRE_SATURATION_FRACTION = 0.3

function coefficients(temperatureC: number): readonly [w: number, k: number, k1: number, k2: number] {
  const t = temperatureC
  return [
    349 + 1.29 * t + 0.0135 * t * t,
    0.805 + 0.000736 * t - 0.00000273 * t * t,
    6.27 - 0.00938 * t - 0.000303 * t * t,
    1.91 + 0.0407 * t - 0.000293 * t * t,
  ]
}

/**
 * Moisture that wood comes to in air that stays as it is.
 * @param temperatureC      −1 to 99 °C, the range of the handbook's table
 * @param humidityFraction  0 to 1
 * @returns mass of water over dry mass, 0 to about 0.28; good to about a per cent point for any kind of wood
 * @throws InvariantError outside of these ranges
 * Method: Wood Handbook eq. 4–5 (two hydrates after Hailwood and Horrobin, coefficients of Simpson for °C).
 * Rules: WOOD-2.  Check values: wood.json "emc-…".
 */
export function equilibriumMoistureFraction(temperatureC: number, humidityFraction: number): number {
  if (!(temperatureC >= -40 && temperatureC <= 100 && humidityFraction >= 0 && humidityFraction <= 1)) {
    throw new InvariantError('air is out of range', { temperatureC, humidityFraction })
  }
  const [w, k, k1, k2] = coefficients(temperatureC)
  const kh = k * humidityFraction
  const hydrated = k1 * kh + 2 * k1 * k2 * kh * kh
  const all = 1 + k1 * kh + k1 * k2 * kh * kh
  return (18 / w) * (kh / (1 - kh) + hydrated / all)
}

const HALVINGS = 60

/**
 * Humidity at which wood keeps its moisture.
 * @returns 0 to 1; 1 where the wood is wetter than any air makes it
 * Method: halving; the equation rises with humidity.
 * Rules: WOOD-2.
 */
export function humidityForMoisture(temperatureC: number, moistureFraction: number): number {
  let [low, high] = [0, 1]
  if (equilibriumMoistureFraction(temperatureC, 1) <= moistureFraction) return 1
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2
    if (equilibriumMoistureFraction(temperatureC, middle) < moistureFraction) low = middle
    else high = middle
  }
  return (low + high) / 2
}
