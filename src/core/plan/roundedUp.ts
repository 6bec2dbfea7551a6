/** Steps in which things are bought, by their unit; everything else by the piece. Common practice, no source. */
const STEPS: Readonly<Record<string, number>> = { m: 1, 'm²': 1, L: 0.25 }

/**
 * A quantity as it can be bought: never less than is needed.
 * @param unit of the shopping list: `m`, `m²`, `L`; empty: pieces
 */
export function roundedUp(quantity: number, unit: string): number {
  const step = STEPS[unit] ?? 1
  // A hair over a whole pack is the rounding of a sum, not a need.
  return Math.ceil(quantity / step - 1e-9) * step
}
