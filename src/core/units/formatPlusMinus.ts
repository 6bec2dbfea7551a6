import { inchToMm, litresToUsGallons, mm2ToM2, mm2ToSquareFeet, mmToInches } from './conversions'
import { formatLength } from './formatLength'
import { InvariantError } from './invariantError'
import type { LengthDisplay } from './lengthDisplay'
import { fixedDecimals } from './rounding'

export type UncertainQuantity = 'length' | 'area' | 'volume'

/** The stated interval holds the truth 95 times in 100 when errors are normal: two standard deviations. */
const DEVIATIONS = 2
/** A ± that only just exceeds a graduation by the arithmetic itself is not pushed up to the next, relative. */
const ROUND_UP_SLACK = 1e-9

/**
 * How sure a figure is, as text beside it: two standard deviations.
 * @param sd       standard deviation, mm, mm² or litres; finite, >= 0
 * @returns `± 6 mm` (below 1 mm `± 0.4 mm`), `± 1/4″`, `± 0.03 m²`, `± 0.4 L`, `± 0.2 US gal`; always rounded **up**, and
 *   never to nothing, so that it is not better than it is
 * @throws InvariantError when the deviation is not finite or negative
 * Rules: UNI-13.
 */
export function formatPlusMinus(sd: number, quantity: UncertainQuantity, display: LengthDisplay): string {
  if (!Number.isFinite(sd) || sd < 0) throw new InvariantError('no standard deviation', { sd })
  return `± ${amountText(DEVIATIONS * sd, quantity, display)}`
}

function amountText(amount: number, quantity: UncertainQuantity, display: LengthDisplay): string {
  switch (quantity) {
    case 'length':
      return lengthText(amount, display)
    case 'area':
      return display.system === 'inch'
        ? `${roundedUp(mm2ToSquareFeet(amount), 1)} ft²`
        : `${roundedUp(mm2ToM2(amount), 2)} m²`
    case 'volume':
      return display.system === 'inch'
        ? `${roundedUp(litresToUsGallons(amount), 1)} US gal`
        : `${roundedUp(amount, 1)} L`
  }
}

function lengthText(amountMm: number, display: LengthDisplay): string {
  if (display.system === 'mm') return `${roundedUp(amountMm, 0)} mm`
  const graduations = stepsUp(mmToInches(amountMm), display.fraction)
  return formatLength(inchToMm(graduations / display.fraction), display)
}

const stepsUp = (value: number, stepsPerUnit: number): number =>
  Math.max(1, Math.ceil(value * stepsPerUnit * (1 - ROUND_UP_SLACK)))

/** With so many decimals, or one more where the figure is smaller than one graduation of these. */
function roundedUp(value: number, decimals: number): string {
  const shown = value < 10 ** -decimals ? decimals + 1 : decimals
  return fixedDecimals(stepsUp(value, 10 ** shown) / 10 ** shown, shown)
}
