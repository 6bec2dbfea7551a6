import { useMemo } from 'react'
import {
  formatAngle,
  formatArea,
  formatForce,
  formatHours,
  formatLength,
  type LengthFormat,
  formatMass,
  formatMoney,
  formatNumber,
  formatPercent,
  formatPlusMinus,
  formatTemperature,
  formatVolume,
  type UncertainQuantity,
} from '../../core/units'
import { useShownPlan } from '../useActive'
import { useDisplay } from './useDisplay'

/** The language of the program's texts: amounts are written as its readers expect them. */
const MONEY_LOCALE = 'en'

export interface Format {
  length: (mm: number, format?: LengthFormat) => string
  area: (mm2: number) => string
  volume: (litres: number) => string
  mass: (kg: number) => string
  share: (fraction: number) => string
  angle: (rad: number) => string
  /** How sure a figure is: two standard deviations, rounded up. Nothing where that is not known. */
  plusMinus: (sd: number | null | undefined, quantity: UncertainQuantity) => string | undefined
  temperature: (celsius: number) => string
  /** A difference of two temperatures. */
  kelvin: (kelvin: number) => string
  force: (newton: number) => string
  hours: (hours: number) => string
  /** An amount in the currency of the job. */
  money: (cents: number) => string
}

/** Figures as text in the units shown: the only way that a component makes a figure. */
export function useFormat(): Format {
  const display = useDisplay()
  const { currency } = useShownPlan().shop
  return useMemo(
    () => ({
      length: (mm, format) => formatLength(mm, display, format),
      area: (mm2) => formatArea(mm2, display),
      volume: (litres) => formatVolume(litres, display),
      mass: (kg) => formatMass(kg, display),
      share: (fraction) => formatPercent(fraction, { decimals: 0 }),
      angle: (rad) => formatAngle(rad, { decimals: 1 }),
      plusMinus: (sd, quantity) =>
        sd === null || sd === undefined ? undefined : formatPlusMinus(sd, quantity, display),
      kelvin: (kelvin) =>
        display.system === 'inch' ? `${formatNumber(kelvin * 1.8)} °F` : `${formatNumber(kelvin)} °C`,
      temperature: (celsius) => formatTemperature(celsius, display),
      force: (newton) => formatForce(newton, display),
      hours: formatHours,
      money: (cents) => formatMoney(cents, currency, MONEY_LOCALE),
    }),
    [display, currency],
  )
}
