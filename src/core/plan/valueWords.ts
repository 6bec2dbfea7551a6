import {
  formatAngle,
  formatArea,
  formatForce,
  formatHours,
  formatLength,
  formatMass,
  formatNumber,
  formatPercent,
  formatTemperature,
  type LengthDisplay,
} from '../units'
import { clockText } from './hourText'
import type { ValueWords } from './text/en/sentence'

/** The values of an issue or an input problem as words, in the units shown. */
export function valueWords(
  values: Readonly<Record<string, string | number>>,
  display: LengthDisplay,
): ValueWords {
  const number = (name: string): number => {
    const value = values[name]
    return typeof value === 'number' ? value : 0
  }
  return {
    length: (name) => formatLength(number(name), display),
    area: (name) => formatArea(number(name), display),
    count: (name) => formatNumber(number(name), { decimals: 0 }),
    angle: (name) => formatAngle(number(name)),
    percent: (name) => formatPercent(number(name)),
    decimal: (name) => formatNumber(number(name), { decimals: Number.isInteger(number(name)) ? 0 : 1 }),
    temperature: (name) => formatTemperature(number(name), display),
    mass: (name) => formatMass(number(name), display),
    force: (name) => formatForce(number(name), display),
    hours: (name) => formatHours(number(name)),
    clock: (name) => clockText(number(name)),
    text: (name) => String(values[name] ?? ''),
  }
}
