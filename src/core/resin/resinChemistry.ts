/** Gas constant, J/(mol K): exact since the SI of 2019 (CODATA). */
export const GAS_CONSTANT_J_PER_MOL_K = 8.314462618

/** 0 °C in kelvin, exact. */
export const ZERO_CELSIUS_K = 273.15

/** What the heat model knows about one resin. SI units, as the equations need them. */
export interface ResinChemistry {
  readonly activationEnergyJPerMol: number
  /** Heat of the whole reaction. */
  readonly reactionHeatJPerKg: number
  readonly conductivityWPerMK: number
  readonly heatCapacityJPerKgK: number
  readonly densityKgPerM3: number
  /** Share of the rate that is there before anything has cured; the rest grows with the degree of cure. */
  readonly startShare: number
  /** Degree of cure at which the resin sets to a gel. */
  readonly gelDegree: number
  /** Rate constant at the reference temperature, 1/s; fitted to the product's sheet. */
  readonly referenceRatePerS: number
  readonly referenceC: number
}

/**
 * A generic slow amine-cured epoxy. No full published set for a slow casting resin was found, so the fit to the
 * product's own sheet carries the model; these figures only shape it.
 * - activation energy: 44 to 61 kJ/mol in several papers on amine cure, 58.6 for one autocatalytic model (read in
 *   abstracts); 50 and 65 are the ends of the band that is shown.
 * - heat of reaction: 356 J/g and 92 kJ per mol of epoxide (read in abstracts); 280 to 400 is possible.
 * - conductivity: 0.2 W/mK (read in materials tables). Heat capacity and density of the liquid: from memory.
 * - start share: fitted to the trade's 12 to 15 hours to the peak; not from the literature.
 * - gel: Flory and Stockmayer for functionality 4 and 2: 1/√3 = 0.577.
 */
export const GENERIC_CHEMISTRY = {
  activationEnergyJPerMol: 58_000,
  reactionHeatJPerKg: 340_000,
  conductivityWPerMK: 0.2,
  heatCapacityJPerKgK: 1900,
  densityKgPerM3: 1100,
  startShare: 0.75,
  gelDegree: 0.577,
} as const

/** Ends of the band of activation energies that is carried through every estimate. */
export const LEAST_ACTIVATION_ENERGY_J_PER_MOL = 50_000
export const GREATEST_ACTIVATION_ENERGY_J_PER_MOL = 65_000
