export type { InputProblem, Result } from './result'
export { ok, problem } from './result'
export { InvariantError, assertNever } from './invariantError'
export {
  boardFeetFromMm3,
  celsiusToFahrenheit,
  cubicFeetToLitres,
  cubicInchesToLitres,
  degreesToRadians,
  fahrenheitToCelsius,
  feetToMm,
  imperialFluidOuncesToLitres,
  imperialGallonsToLitres,
  inchToMm,
  kgToOunces,
  kgToPounds,
  litresToImperialGallons,
  litresToMm3,
  litresToUsFluidOunces,
  litresToUsGallons,
  mm2ToM2,
  mm2ToSquareFeet,
  mm3FromBoardFeet,
  mm3ToLitres,
  mmToFeet,
  mmToInches,
  pascalsToPsi,
  poundsPerCubicFootToKgPerM3,
  poundsToKg,
  psiToPascals,
  radiansToDegrees,
  usFluidOuncesToLitres,
  usGallonsToLitres,
} from './conversions'
export type { LengthDisplay } from './lengthDisplay'
export type { LengthLimits } from './parseLength'
export { parseLength, parseLengthWithin, parseSignedLength } from './parseLength'
export type { LengthFormat } from './formatLength'
export { formatLength } from './formatLength'
export type { NumberFormat } from './formatQuantity'
export {
  formatAngle,
  formatArea,
  formatForce,
  formatHours,
  formatMass,
  formatNumber,
  formatPercent,
  formatTemperature,
  formatVolume,
} from './formatQuantity'
export type { UncertainQuantity } from './formatPlusMinus'
export { formatPlusMinus } from './formatPlusMinus'
export type { MoneyLimits } from './money'
export { formatMoney, formatMoneyPlain, parseMoneyCents } from './money'
export type { NumberLimits } from './parseNumber'
export { parseAngle, parseNumberWithin, parsePercent } from './parseNumber'
