import { InvariantError } from './invariantError'

/** How far a product of decimals may miss its true value, relative: keeps "half" a half (1.005 × 100 = 100.49999…). */
const HALF_NUDGE = 4 * Number.EPSILON

/**
 * The one place where a quantity is rounded: when its text is made.
 * @param value         a finite number
 * @param stepsPerUnit  graduations to the unit: 16 for sixteenths, 100 for two decimals; > 0
 * @returns whole number of graduations, halves away from zero, never -0
 * @throws InvariantError when the value is not finite
 * Rules: UNI-3.
 */
export function countSteps(value: number, stepsPerUnit: number): number {
  if (!Number.isFinite(value) || !(stepsPerUnit > 0)) {
    throw new InvariantError('only a finite number can be rounded', { value, stepsPerUnit })
  }
  const steps = Math.abs(value) * stepsPerUnit
  const count = Math.round(steps * (1 + HALF_NUDGE))
  return value < 0 && count > 0 ? -count : count
}

/** A true minus sign, as wide as the plus; the parsers read it back. */
export const MINUS = '−'

/**
 * @param count   what was rounded
 * @param signed  also write the plus
 * @returns the sign to write before the magnitude; none for zero
 */
export function signOf(count: number, signed: boolean): string {
  if (count < 0) return MINUS
  return signed && count > 0 ? '+' : ''
}

/**
 * A number with a fixed number of decimals, a dot as the decimal sign, no digit grouping, never -0.
 * @param value     finite
 * @param decimals  0 to 6
 * @param signed    also write the plus of a positive number
 */
export function fixedDecimals(value: number, decimals: number, signed = false): string {
  const stepsPerUnit = 10 ** decimals
  const count = countSteps(value, stepsPerUnit)
  return signOf(count, signed) + (Math.abs(count) / stepsPerUnit).toFixed(decimals)
}

export interface SignificantDigits {
  readonly digits: number
  readonly leastDecimals: number
  readonly greatestDecimals: number
}

/** Decimals that show so many significant digits of the value, within the limits. */
function decimalsFor(value: number, wanted: SignificantDigits): number {
  const magnitude = Math.abs(value)
  if (magnitude === 0) return wanted.leastDecimals
  const decimals = wanted.digits - 1 - Math.floor(Math.log10(magnitude))
  return Math.min(wanted.greatestDecimals, Math.max(wanted.leastDecimals, decimals))
}

/** A number with about so many significant digits; 0.9996 to three is 1.00, not 1.000. */
export function significantText(value: number, wanted: SignificantDigits): string {
  const decimals = decimalsFor(value, wanted)
  const rounded = countSteps(value, 10 ** decimals) / 10 ** decimals
  return fixedDecimals(value, decimalsFor(rounded, wanted))
}
