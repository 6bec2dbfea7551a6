import { mmToInches } from './conversions'
import type { LengthDisplay } from './lengthDisplay'
import { countSteps, fixedDecimals, signOf } from './rounding'

export interface LengthFormat {
  /** Write the plus of a positive length too (shifts, differences). */
  readonly signed?: boolean
  /** Graduation in mm of the mm display; the inch display uses its own fraction. */
  readonly precision?: 1 | 0.1
  /** Feet in the inch display: from 24 in on (the usual way at the bench, where rules and squares end at 24 in), or as said. */
  readonly feet?: 'from-24-inches' | 'always' | 'never'
}

/** Common practice, no source: shorter work is spoken of in inches alone. */
const FEET_FROM_INCHES = 24

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b)

/** Whole inches and a reduced fraction, without a sign: `2 1/2`, `1/2`, `0`; after feet `0 1/2`. */
function inchesText(graduations: number, fraction: number, afterFeet: boolean): string {
  const whole = Math.floor(graduations / fraction)
  const rest = graduations % fraction
  if (rest === 0) return String(whole)
  const divisor = greatestCommonDivisor(rest, fraction)
  const part = `${rest / divisor}/${fraction / divisor}`
  return whole === 0 && !afterFeet ? part : `${whole} ${part}`
}

/** Rounded to graduations first, so that 11 31/32 to sixteenths carries into 12 in and not into "11 16/16". */
function imperialText(mm: number, fraction: number, format: LengthFormat): string {
  const count = countSteps(mmToInches(mm), fraction)
  const graduations = Math.abs(count)
  const { feet = 'from-24-inches' } = format
  const feetFrom = { 'from-24-inches': FEET_FROM_INCHES, always: 12, never: Infinity }[feet]
  const sign = signOf(count, format.signed ?? false)
  if (graduations < feetFrom * fraction) return `${sign}${inchesText(graduations, fraction, false)}″`
  const graduationsPerFoot = 12 * fraction
  const wholeFeet = Math.floor(graduations / graduationsPerFoot)
  const inches = inchesText(graduations % graduationsPerFoot, fraction, true)
  return `${sign}${wholeFeet}′ ${inches}″`
}

/**
 * A length as text, rounded here and nowhere before.
 * @param mm       length, mm, finite
 * @param display  mm, or inches with the finest fraction to show
 * @param format   sign, mm graduation, feet
 * @returns `2200 mm`, `2199.5 mm`, `35 3/8″`, `7′ 2 1/2″`; fractions reduced and carried, halves away from zero, never -0
 * @throws InvariantError when the length is not finite
 * Rules: UNI-3, UNI-8, UNI-9.
 */
export function formatLength(mm: number, display: LengthDisplay, format: LengthFormat = {}): string {
  if (display.system === 'inch') return imperialText(mm, display.fraction, format)
  return `${fixedDecimals(mm, format.precision === 0.1 ? 1 : 0, format.signed)} mm`
}
