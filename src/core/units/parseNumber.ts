import { degreesToRadians } from './conversions'
import { commasAsPoints, hasAmbiguousComma, plainSigns } from './lengthText'
import { ok, problem, type Result } from './result'

export interface NumberLimits {
  readonly least: number
  readonly greatest: number
}

/** Matches nothing. */
const NO_UNIT = /(?!)/

const DECIMAL = /^[+-]? ?(?:\d+\.?\d*|\.\d+)$/

/** A decimal number from cleaned text, or the last part of the problem's code. */
function decimalOf(plain: string): number | 'empty' | 'ambiguous-comma' | 'not-understood' {
  if (plain === '') return 'empty'
  if (hasAmbiguousComma(plain)) return 'ambiguous-comma'
  const points = commasAsPoints(plain)
  const value = DECIMAL.test(points) && points.length <= 60 ? Number(points.replace(' ', '')) : NaN
  if (!Number.isFinite(value)) return 'not-understood'
  return value === 0 ? 0 : value
}

/** `toValue` turns what was typed into what is kept; the limits and the problem's values are in what was typed. */
function parseWithin(
  kind: 'number' | 'percent' | 'angle',
  text: string,
  unit: RegExp,
  limits: NumberLimits,
): Result<number> {
  const shown = text.trim().slice(0, 60)
  const value = decimalOf(plainSigns(text).replace(unit, ''))
  if (value === 'empty' && shown === '') return problem(`${kind}-empty`)
  if (value === 'empty') return problem(`${kind}-not-understood`, { text: shown })
  if (typeof value === 'string') return problem(`${kind}-${value}`, { text: shown })
  const values = { text: shown, least: limits.least, greatest: limits.greatest }
  if (value < limits.least) return problem(`${kind}-too-small`, values)
  return value > limits.greatest ? problem(`${kind}-too-large`, values) : ok(value)
}

/**
 * Reads a plain number with a dot or a comma as the decimal sign.
 * @param limits  both allowed
 * @returns the number; problems, each with `text`: number-empty (no values), number-not-understood, number-ambiguous-comma,
 *   and number-too-small, number-too-large with `least`, `greatest`
 * Rules: UNI-6, UNI-12.
 */
export function parseNumberWithin(text: string, limits: NumberLimits): Result<number> {
  return parseWithin('number', text, NO_UNIT, limits)
}

/**
 * Reads per cent, with or without the sign.
 * @param limits  in per cent, both allowed; 0 to 100 unless given
 * @returns a fraction: `12,5 %` is 0.125; problems percent-…, as for numbers, limits in per cent
 * Rules: UNI-6, UNI-12.
 */
export function parsePercent(
  text: string,
  limits: NumberLimits = { least: 0, greatest: 100 },
): Result<number> {
  const percent = parseWithin('percent', text, / ?%$/, limits)
  return percent.ok ? ok(percent.value / 100) : percent
}

/**
 * Reads an angle in degrees, with or without `°` or `deg`.
 * @param limits  in degrees, both allowed; -360 to 360 unless given
 * @returns radians; problems angle-…, as for numbers, limits in degrees
 * Rules: UNI-6, UNI-12.
 */
export function parseAngle(
  text: string,
  limits: NumberLimits = { least: -360, greatest: 360 },
): Result<number> {
  const degrees = parseWithin('angle', text, / ?(?:°|deg|degrees?)$/, limits)
  return degrees.ok ? ok(degreesToRadians(degrees.value)) : degrees
}
