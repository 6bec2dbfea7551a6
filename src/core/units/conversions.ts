import { InvariantError } from './invariantError'

/**
 * Exact factors. Every conversion of the project is made here, at the edge: input box, file, label.
 * Inch, foot, US gallon (231 in³) and US fluid ounce (1/128 of it): NIST SP 811 (2008), appendix B, read in restatements.
 * Imperial gallon, 4.546 09 L, and its fluid ounce: UK Units of Measurement Regulations 1995, the figures read in a
 * restatement. Pound: the agreement of 1959, from memory. Standard gravity 9.806 65 m/s²: CGPM 1901, from memory.
 * All of them are compared with an independent program in tests/check-values/units.test.ts.
 */
const MM_PER_INCH = 25.4
const INCHES_PER_FOOT = 12
const MM3_PER_LITRE = 1_000_000
const MM2_PER_M2 = 1_000_000
const LITRES_PER_US_GALLON = 3.785411784
const US_FLUID_OUNCES_PER_GALLON = 128
const LITRES_PER_IMPERIAL_GALLON = 4.54609
const IMPERIAL_FLUID_OUNCES_PER_GALLON = 160
const KG_PER_POUND = 0.45359237
const OUNCES_PER_POUND = 16
const STANDARD_GRAVITY_M_PER_S2 = 9.80665
const CUBIC_INCHES_PER_BOARD_FOOT = 144
const MM2_PER_SQUARE_FOOT = (MM_PER_INCH * INCHES_PER_FOOT) ** 2
const MM3_PER_CUBIC_INCH = 16_387.064
const LITRES_PER_CUBIC_FOOT = 28.316846592
const PASCALS_PER_PSI = (KG_PER_POUND * STANDARD_GRAVITY_M_PER_S2) / (MM_PER_INCH / 1000) ** 2

/** Inches to mm; 1 in = 25.4 mm exactly (NIST SP 811). Rules: UNI-1. */
export const inchToMm = (inches: number): number => inches * MM_PER_INCH

/** Mm to inches; 1 in = 25.4 mm exactly (NIST SP 811). Rules: UNI-1. */
export const mmToInches = (mm: number): number => mm / MM_PER_INCH

/** Feet to mm; 1 ft = 304.8 mm exactly (NIST SP 811). Rules: UNI-1. */
export const feetToMm = (feet: number): number => feet * INCHES_PER_FOOT * MM_PER_INCH

/** Mm to feet; 1 ft = 304.8 mm exactly (NIST SP 811). Rules: UNI-1. */
export const mmToFeet = (mm: number): number => mm / (INCHES_PER_FOOT * MM_PER_INCH)

/** Mm² to m². Rules: UNI-1. */
export const mm2ToM2 = (areaMm2: number): number => areaMm2 / MM2_PER_M2

/** Mm² to square feet; 1 ft² = 92 903.04 mm² exactly (from the foot). Rules: UNI-1. */
export const mm2ToSquareFeet = (areaMm2: number): number => areaMm2 / MM2_PER_SQUARE_FOOT

/** Mm³ to litres; 1 L = 1 000 000 mm³ exactly. Rules: UNI-1. */
export const mm3ToLitres = (volumeMm3: number): number => volumeMm3 / MM3_PER_LITRE

/** Litres to mm³; 1 L = 1 000 000 mm³ exactly. Rules: UNI-1. */
export const litresToMm3 = (volumeLitres: number): number => volumeLitres * MM3_PER_LITRE

/** Cubic inches to litres; 1 in³ = 16.387064 mL exactly (from the inch). Rules: UNI-1. */
export const cubicInchesToLitres = (cubicInches: number): number =>
  (cubicInches * MM3_PER_CUBIC_INCH) / MM3_PER_LITRE

/** Cubic feet to litres; 1 ft³ = 28.316846592 L exactly (from the foot). Rules: UNI-1. */
export const cubicFeetToLitres = (cubicFeet: number): number => cubicFeet * LITRES_PER_CUBIC_FOOT

/** Litres to US gallons; 1 US gal = 231 in³ = 3.785411784 L exactly (NIST SP 811). Rules: UNI-1. */
export const litresToUsGallons = (volumeLitres: number): number => volumeLitres / LITRES_PER_US_GALLON

/** US gallons to litres; 1 US gal = 231 in³ = 3.785411784 L exactly (NIST SP 811). Rules: UNI-1. */
export const usGallonsToLitres = (usGallons: number): number => usGallons * LITRES_PER_US_GALLON

/** Litres to US fluid ounces; 128 to the US gallon (NIST SP 811). Rules: UNI-1. */
export const litresToUsFluidOunces = (volumeLitres: number): number =>
  (volumeLitres * US_FLUID_OUNCES_PER_GALLON) / LITRES_PER_US_GALLON

/** US fluid ounces to litres; 128 to the US gallon (NIST SP 811). Rules: UNI-1. */
export const usFluidOuncesToLitres = (usFluidOunces: number): number =>
  (usFluidOunces * LITRES_PER_US_GALLON) / US_FLUID_OUNCES_PER_GALLON

/** Litres to imperial gallons; 1 imp gal = 4.54609 L exactly (UK regulations 1995). Rules: UNI-1. */
export const litresToImperialGallons = (volumeLitres: number): number =>
  volumeLitres / LITRES_PER_IMPERIAL_GALLON

/** Imperial gallons to litres; 1 imp gal = 4.54609 L exactly (UK regulations 1995). Rules: UNI-1. */
export const imperialGallonsToLitres = (imperialGallons: number): number =>
  imperialGallons * LITRES_PER_IMPERIAL_GALLON

/** Imperial fluid ounces to litres; 160 to the imperial gallon. Rules: UNI-1. */
export const imperialFluidOuncesToLitres = (imperialFluidOunces: number): number =>
  (imperialFluidOunces * LITRES_PER_IMPERIAL_GALLON) / IMPERIAL_FLUID_OUNCES_PER_GALLON

/** Kilograms to pounds; 1 lb = 0.45359237 kg exactly (1959 agreement). Rules: UNI-1. */
export const kgToPounds = (massKg: number): number => massKg / KG_PER_POUND

/** Pounds to kilograms; 1 lb = 0.45359237 kg exactly (1959 agreement). Rules: UNI-1. */
export const poundsToKg = (pounds: number): number => pounds * KG_PER_POUND

/** Kilograms to ounces of weight; 16 to the pound. Rules: UNI-1. */
export const kgToOunces = (massKg: number): number => (massKg * OUNCES_PER_POUND) / KG_PER_POUND

/** Pounds per cubic foot to kg/m³, from the exact pound and foot. Rules: UNI-1. */
export const poundsPerCubicFootToKgPerM3 = (poundsPerCubicFoot: number): number =>
  (poundsPerCubicFoot * KG_PER_POUND * 1000) / LITRES_PER_CUBIC_FOOT

/** Pounds-force per square inch to pascals, from the exact pound, inch and standard gravity. Rules: UNI-1. */
export const psiToPascals = (psi: number): number => psi * PASCALS_PER_PSI

/** Pascals to pounds-force per square inch, from the exact pound, inch and standard gravity. Rules: UNI-1. */
export const pascalsToPsi = (pascals: number): number => pascals / PASCALS_PER_PSI

/**
 * Wood volume in board feet, exact: no tally rounding (that is a seller's rule, and lives with the price).
 * @param volumeMm3  wood volume, mm³, finite
 * @returns board feet; 1 bf = 1 ft × 1 ft × 1 in = 144 in³ = 2.359737216 L exactly
 * @throws InvariantError when the volume is not finite
 * Rules: UNI-2.  Check values: units.json "board-foot".
 */
export function boardFeetFromMm3(volumeMm3: number): number {
  if (!Number.isFinite(volumeMm3)) throw new InvariantError('volume must be finite', { volumeMm3 })
  return volumeMm3 / (CUBIC_INCHES_PER_BOARD_FOOT * MM3_PER_CUBIC_INCH)
}

/** Board feet to mm³; 1 bf = 144 in³ exactly. Rules: UNI-2. */
export const mm3FromBoardFeet = (boardFeet: number): number =>
  boardFeet * CUBIC_INCHES_PER_BOARD_FOOT * MM3_PER_CUBIC_INCH

/** Degrees to radians. Rules: UNI-1. */
export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180

/** Radians to degrees. Rules: UNI-1. */
export const radiansToDegrees = (angleRad: number): number => (angleRad * 180) / Math.PI

/** Degrees Celsius to Fahrenheit: °F = °C × 9/5 + 32 exactly (NIST SP 811). Rules: UNI-1. */
export const celsiusToFahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32

/** Degrees Fahrenheit to Celsius: °C = (°F − 32) × 5/9 exactly (NIST SP 811). Rules: UNI-1. */
export const fahrenheitToCelsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9
