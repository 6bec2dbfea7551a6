import { formatNumber } from '../../../core/units'

/** `3`, `1.4 L`: as many decimals as the quantity needs, at most two. */
export function quantityText(quantity: number, unit: string): string {
  const decimals = Number.isInteger(quantity) ? 0 : quantity < 10 ? 2 : 1
  const number = formatNumber(quantity, { decimals })
  return unit === '' ? number : `${number} ${unit}`
}
