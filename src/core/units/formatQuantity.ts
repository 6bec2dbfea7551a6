import {
  celsiusToFahrenheit,
  kgToOunces,
  kgToPounds,
  litresToUsFluidOunces,
  litresToUsGallons,
  mm2ToM2,
  mm2ToSquareFeet,
  radiansToDegrees,
} from './conversions'
import type { LengthDisplay } from './lengthDisplay'
import { countSteps, fixedDecimals, significantText } from './rounding'

const THREE_DIGITS = { digits: 3, leastDecimals: 1, greatestDecimals: 3 }

/**
 * @param areaMm2  area, mm², finite
 * @returns `2.16 m²`, `0.216 m²` (at least two decimals, at most four), or `23.3 ft²`, `2.33 ft²`
 * Rules: UNI-10.
 */
export function formatArea(areaMm2: number, display: LengthDisplay): string {
  return display.system === 'inch'
    ? `${significantText(mm2ToSquareFeet(areaMm2), THREE_DIGITS)} ft²`
    : `${significantText(mm2ToM2(areaMm2), { digits: 3, leastDecimals: 2, greatestDecimals: 4 })} m²`
}

const litresText = (volumeLitres: number): string => `${significantText(volumeLitres, THREE_DIGITS)} L`

/**
 * @param volumeLitres  litres, finite
 * @returns `12.3 L`; with the inch display `3.25 US gal (12.3 L)`, under one gallon `16.9 US fl oz (0.500 L)`: resin is
 *   sold both ways
 * Rules: UNI-10.
 */
export function formatVolume(volumeLitres: number, display: LengthDisplay): string {
  const litres = litresText(volumeLitres)
  if (display.system === 'mm') return litres
  const gallons = litresToUsGallons(volumeLitres)
  return Math.abs(countSteps(gallons, 1000)) < 1000
    ? `${fixedDecimals(litresToUsFluidOunces(volumeLitres), 1)} US fl oz (${litres})`
    : `${significantText(gallons, THREE_DIGITS)} US gal (${litres})`
}

/**
 * @param massKg  kilograms, finite
 * @returns `45.2 kg`, under 1 kg `452 g`; with the inch display `99.6 lb`, under 1 lb `7.2 oz`
 * Rules: UNI-10.
 */
export function formatMass(massKg: number, display: LengthDisplay): string {
  if (display.system === 'mm') {
    return Math.abs(countSteps(massKg, 1000)) < 1000
      ? `${fixedDecimals(massKg * 1000, 0)} g`
      : `${significantText(massKg, THREE_DIGITS)} kg`
  }
  const pounds = kgToPounds(massKg)
  return Math.abs(countSteps(pounds, 1000)) < 1000
    ? `${fixedDecimals(kgToOunces(massKg), 1)} oz`
    : `${significantText(pounds, THREE_DIGITS)} lb`
}

/**
 * @param celsius  °C, finite
 * @returns `23 °C`, or `73 °F` with the inch display
 * Rules: UNI-10.
 */
export function formatTemperature(celsius: number, display: LengthDisplay): string {
  return display.system === 'inch'
    ? `${fixedDecimals(celsiusToFahrenheit(celsius), 0)} °F`
    : `${fixedDecimals(celsius, 0)} °C`
}

/** Standard gravity, m/s²: CGPM 1901, from memory. */
const STANDARD_GRAVITY_M_PER_S2 = 9.80665

/**
 * @param forceN  newton, finite
 * @returns `850 N (about 87 kg)`, or `191 lbf` with the inch display: what has to lie on it
 * Rules: UNI-10.
 */
export function formatForce(forceN: number, display: LengthDisplay): string {
  const massKg = forceN / STANDARD_GRAVITY_M_PER_S2
  return display.system === 'inch'
    ? `${fixedDecimals(kgToPounds(massKg), 0)} lbf`
    : `${significantText(forceN, { digits: 2, leastDecimals: 0, greatestDecimals: 0 })} N (about ${fixedDecimals(massKg, massKg < 10 ? 1 : 0)} kg)`
}

/**
 * @param hours  finite
 * @returns `17 h`, under two hours `45 min`
 * Rules: UNI-10.
 */
export function formatHours(hours: number): string {
  return hours < 2 ? `${fixedDecimals(hours * 60, 0)} min` : `${fixedDecimals(hours, 0)} h`
}

export interface NumberFormat {
  readonly decimals?: number
  readonly signed?: boolean
}

/** A plain number, dot as the decimal sign, no grouping, never -0; no decimals unless asked for. Rules: UNI-3. */
export function formatNumber(value: number, format: NumberFormat = {}): string {
  return fixedDecimals(value, format.decimals ?? 0, format.signed)
}

/** A fraction (0 to 1) as `12.5 %`; one decimal unless asked otherwise. Rules: UNI-3, UNI-10. */
export function formatPercent(fraction: number, format: NumberFormat = {}): string {
  return `${fixedDecimals(fraction * 100, format.decimals ?? 1, format.signed)} %`
}

/** An angle in radians as degrees, `12.5°`; one decimal unless asked otherwise. Rules: UNI-3, UNI-10. */
export function formatAngle(angleRad: number, format: NumberFormat = {}): string {
  return `${fixedDecimals(radiansToDegrees(angleRad), format.decimals ?? 1, format.signed)}°`
}
