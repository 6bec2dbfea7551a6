import { inchToMm, feetToMm } from './conversions'
import type { LengthDisplay } from './lengthDisplay'
import { commasAsPoints, hasAmbiguousComma, plainLength, plainSigns } from './lengthText'
import { ok, problem, type Result } from './result'

/** Longer than a length that a maker types; bounds the work on pasted text. */
const GREATEST_TEXT_LENGTH = 60

const AMOUNT = String.raw`(?:\d+[ -])?\d+/\d+|\d+\.?\d*|\.\d+`
const SINGLE = new RegExp(String.raw`^(${AMOUNT}) ?(mm|cm|m|'|")?$`)
const FEET_AND_INCHES = new RegExp(String.raw`^(\d+) ?' ?-? ?(${AMOUNT}) ?"?$`)
/** Taken out one by one rather than matched as a repeated group, which takes exponential time on a long wrong text. */
const AMOUNTS_AND_UNITS = new RegExp(String.raw`${AMOUNT}|mm|cm|m|'|"|[ -]`, 'g')
/** 7ft.5in may be five inches or half an inch. */
const DOT_AFTER_UNIT = /[a-z'"]\.\d/
const PARTS_OF_AMOUNT = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/

const MM_PER_UNIT: Readonly<Record<string, (amount: number) => number>> = {
  mm: (amount) => amount,
  cm: (amount) => amount * 10,
  m: (amount) => amount * 1000,
  '"': inchToMm,
  "'": feetToMm,
}

/** 86, 86.5, .5, 1/2, 86 1/2 or 86-1/2 as a number; null when the denominator is zero. */
function amountOf(text: string): number | null {
  const parts = PARTS_OF_AMOUNT.exec(text)
  if (parts === null) return Number(text)
  const [, whole = '0', numerator, denominator] = parts
  return Number(denominator) === 0 ? null : Number(whole) + Number(numerator) / Number(denominator)
}

function feetAndInches(feet: string, inches: string, text: string): Result<number> {
  const amount = amountOf(inches)
  return amount === null
    ? problem('length-zero-denominator', { text })
    : ok(inchToMm(Number(feet) * 12 + amount))
}

function single(amountText: string, unit: string, text: string): Result<number> {
  const amount = amountOf(amountText)
  const toMm = MM_PER_UNIT[unit]
  if (amount === null) return problem('length-zero-denominator', { text })
  return toMm === undefined ? problem('length-not-understood', { text }) : ok(toMm(amount))
}

/** Why a text that is neither one amount nor feet and inches was refused. */
function refusal(plain: string, text: string): Result<number> {
  const units = new Set(plain.match(/mm|cm|m|'|"/g) ?? [])
  const isMetricMixed = units.size > 1 && ['mm', 'cm', 'm'].some((unit) => units.has(unit))
  return isMetricMixed && plain.replace(AMOUNTS_AND_UNITS, '') === ''
    ? problem('length-mixed-units', { text })
    : problem('length-not-understood', { text })
}

function unsignedLength(plain: string, display: LengthDisplay, text: string): Result<number> {
  const pair = FEET_AND_INCHES.exec(plain)
  if (pair !== null) return feetAndInches(pair[1] ?? '', pair[2] ?? '', text)
  const one = SINGLE.exec(plain)
  if (one === null) return refusal(plain, text)
  return single(one[1] ?? '', one[2] ?? (display.system === 'mm' ? 'mm' : '"'), text)
}

/**
 * Reads a length that may be negative (a shift, a position), as `parseLength` otherwise.
 * @returns mm; the problems of `parseLength` without `length-negative`
 * Rules: UNI-4, UNI-5, UNI-6.
 */
export function parseSignedLength(text: string, display: LengthDisplay): Result<number> {
  const shown = text.trim().slice(0, GREATEST_TEXT_LENGTH)
  if (shown === '') return problem('length-empty')
  if (text.trim().length > GREATEST_TEXT_LENGTH) return problem('length-not-understood', { text: shown })
  const typed = plainLength(text)
  if (hasAmbiguousComma(typed)) return problem('length-ambiguous-comma', { text: shown })
  if (DOT_AFTER_UNIT.test(plainSigns(text))) return problem('length-not-understood', { text: shown })
  const points = commasAsPoints(typed)
  const isNegative = points.startsWith('-')
  const length = unsignedLength(points.replace(/^[+-] ?/, ''), display, shown)
  return length.ok && isNegative && length.value !== 0 ? ok(-length.value) : length
}

/**
 * Reads a length as makers type it: `7' 2 1/2"`, `7ft 2-1/2in`, `86 1/2`, `35⅜`, `.5"`, `2.2 m`, `2,2 m`, `220 cm`, `2200`.
 * @param text     what was typed
 * @param display  gives the unit of a bare number: mm, or inches
 * @returns mm, ≥ 0, not rounded
 *   problems, each with `text`: length-empty (no values), length-not-understood, length-negative, length-zero-denominator,
 *   length-mixed-units, length-ambiguous-comma
 * Rules: UNI-4, UNI-5, UNI-6.
 */
export function parseLength(text: string, display: LengthDisplay): Result<number> {
  const length = parseSignedLength(text, display)
  return length.ok && length.value < 0 ? problem('length-negative', { text: text.trim() }) : length
}

export interface LengthLimits {
  readonly leastMm: number
  readonly greatestMm: number
}

/**
 * As `parseLength`, within limits that are themselves allowed. Negative lengths are read when `leastMm` is negative.
 * @returns mm, leastMm ≤ value ≤ greatestMm; also the problems length-too-small and length-too-large, with
 *   `text`, `valueMm`, `leastMm` and `greatestMm`
 * Rules: UNI-7.
 */
export function parseLengthWithin(
  text: string,
  display: LengthDisplay,
  limits: LengthLimits,
): Result<number> {
  const { leastMm, greatestMm } = limits
  const length = leastMm < 0 ? parseSignedLength(text, display) : parseLength(text, display)
  if (!length.ok) return length
  const values = { text: text.trim(), valueMm: length.value, leastMm, greatestMm }
  if (length.value < leastMm) return problem('length-too-small', values)
  return length.value > greatestMm ? problem('length-too-large', values) : length
}
