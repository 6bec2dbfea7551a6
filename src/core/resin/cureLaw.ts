import { InvariantError } from '../units'
import { GAS_CONSTANT_J_PER_MOL_K, ZERO_CELSIUS_K, type ResinChemistry } from './resinChemistry'

/** Rate of cure, 1/s, at a degree of cure (0 to 1) and a temperature in kelvin. */
export type CureLaw = (degree: number, temperatureK: number) => number

/** Rate constant at a temperature, 1/s: Arrhenius about the reference temperature. */
export function rateConstantPerS(chemistry: ResinChemistry, temperatureK: number): number {
  const referenceK = chemistry.referenceC + ZERO_CELSIUS_K
  const exponent =
    (chemistry.activationEnergyJPerMol / GAS_CONSTANT_J_PER_MOL_K) * (1 / temperatureK - 1 / referenceK)
  return chemistry.referenceRatePerS * Math.exp(-exponent)
}

/**
 * The law of the model: dα/dt = K(T)·(κ + α)·(1 − α)².
 * @returns a function for the inner loop; α above 1 gives 0
 * Method: autocatalytic (Kamal) law with m = 1, n = 2, the usual one for amine-cured epoxies.
 * Rules: RES-4.
 */
export function autocatalyticLaw(chemistry: ResinChemistry): CureLaw {
  const energyK = chemistry.activationEnergyJPerMol / GAS_CONSTANT_J_PER_MOL_K
  const atInfinity = chemistry.referenceRatePerS * Math.exp(energyK / (chemistry.referenceC + ZERO_CELSIUS_K))
  const { startShare } = chemistry
  return (degree, temperatureK) => {
    const left = 1 - degree
    return left <= 0
      ? 0
      : atInfinity * Math.exp(-energyK / temperatureK) * (startShare + degree) * left * left
  }
}

/**
 * Time to reach a degree of cure at one constant temperature, in closed form.
 * @param degree  0 to below 1
 * @returns hours
 * @throws InvariantError when the degree is not within 0 to below 1
 * Method: the integral of the law: K·t = ln[(κ+α)/(κ(1−α))]/(1+κ)² + α/[(1−α)(1+κ)].
 * Rules: RES-4.
 */
export function isothermalHours(chemistry: ResinChemistry, degree: number, temperatureC: number): number {
  if (!(degree >= 0 && degree < 1))
    throw new InvariantError('degree of cure must be in 0 to below 1', { degree })
  const { startShare } = chemistry
  const whole = 1 + startShare
  const growth = Math.log((startShare + degree) / (startShare * (1 - degree))) / (whole * whole)
  const decay = degree / ((1 - degree) * whole)
  return (growth + decay) / rateConstantPerS(chemistry, temperatureC + ZERO_CELSIUS_K) / 3600
}
