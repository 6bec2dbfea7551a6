import { wholeCents } from './cents'

/** How a slab is sold. */
export type PriceUnit = 'piece' | 'board-foot' | 'cubic-metre' | 'kilogram'

export interface SoldSlab {
  readonly boardFeet: number
  readonly cubicMetres: number
  /** Null where the kind of wood is not known. */
  readonly massKg: number | null
}

/**
 * What a slab costs.
 * @returns whole cents; null where it is sold by the kilogram and nobody knows its weight
 * Rules: QUO-6.
 */
export function slabCents(unit: PriceUnit, priceCents: number, sold: SoldSlab): number | null {
  switch (unit) {
    case 'piece':
      return priceCents
    case 'board-foot':
      return wholeCents(sold.boardFeet * priceCents)
    case 'cubic-metre':
      return wholeCents(sold.cubicMetres * priceCents)
    case 'kilogram':
      return sold.massKg === null ? null : wholeCents(sold.massKg * priceCents)
  }
}

/** A slab's money, by where its wood ends. The two add up to the price. */
export interface WoodMoney {
  readonly inTableCents: number
  readonly wasteCents: number
}

/** @param usedFraction share of the bought wood that is in the finished table, 0 to 1. Rules: QUO-6. */
export function woodMoney(slabPriceCents: number, usedFraction: number): WoodMoney {
  const inTableCents = wholeCents(slabPriceCents * Math.min(1, Math.max(0, usedFraction)))
  return { inTableCents, wasteCents: slabPriceCents - inTableCents }
}

/**
 * Finish for a top, both faces and all edges alike, so that it takes up water evenly.
 * @param coverM2PerLitre what a litre covers once, by its sheet
 * @returns litres
 * Rules: QUO-7.
 */
export const finishLitres = (areaMm2: number, coats: number, coverM2PerLitre: number): number =>
  ((areaMm2 / 1e6) * coats) / coverM2PerLitre
