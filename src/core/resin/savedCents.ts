/** What packs come to, and how many litres are mixed of them. */
export interface PackedMix {
  readonly costCents: number | null
  readonly mixLitres: number
}

/**
 * What litres less are worth. Packs are bought whole, so it is the mean price of those that the job needs now, rounded to
 * the cent; null where the packs have no price or nothing is mixed.
 * @param litres resin that is not poured
 */
export const savedCents = (litres: number, { costCents, mixLitres }: PackedMix): number | null =>
  costCents === null || !(mixLitres > 0) ? null : Math.round((litres * costCents) / mixLitres)
