import { packsToBuy, type PackChoice } from './packChoice'
import type { PackKind } from './productSheet'

export interface PackWish {
  readonly packs: readonly PackKind[]
  /** Bought in addition to the need, as a share. */
  readonly packMarginFraction: number
  /** Resin already on the shelf, litres of mix. */
  readonly haveLitres: number
}

/** More than this is no table. */
const MOST_LITRES = 5000

/**
 * Packs for an amount of mix, with its margin and less what is on the shelf.
 * @returns null where the sheet names no usable pack, or the amount is beyond all measure
 * Rules: RES-20.
 */
export function packsForNeed(mixLitres: number, wish: PackWish): PackChoice | null {
  const kinds = wish.packs.filter(({ litres, priceCents }) => litres >= 0.001 && priceCents >= 0)
  const wanted = mixLitres * (1 + wish.packMarginFraction) - wish.haveLitres
  return wanted <= MOST_LITRES ? packsToBuy(Math.max(0, wanted), kinds) : null
}
