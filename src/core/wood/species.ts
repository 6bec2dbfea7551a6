/** Where a figure of the table was had. */
export type WoodSource =
  /** Wood Handbook, FPL-GTR-190 (2010), table 4–3, read in a stored copy. */
  | 'handbook-4-3'
  /** Table 4–4 of the same, read in a stored copy whose columns run into each other. */
  | 'handbook-4-4'
  /** Table 5–5b of the same, read in an excerpt. */
  | 'handbook-5-5b'
  /** Figures of table 5–3b, read in a copy by others. */
  | 'handbook-5-3-copy'
  /** From memory, and found again from the coefficient that table 13–5 prints (read): see the README. */
  | 'handbook-13-5-checked'
  /** Table 4–3, 4–4, 5–3b or 5–5b from memory; nobody has seen it for this program. */
  | 'from-memory'
  /** Typed by the maker. */
  | 'own'

export interface Cited {
  readonly value: number
  readonly source: WoodSource
}

/** Average figures of a kind of wood; a slab may be a tenth off in weight, and more in movement. */
export interface Species {
  readonly id: string
  readonly name: string
  readonly latinName: string
  /** Oven-dry mass over volume, relative to water; the volume at 12 % moisture, or green. */
  readonly gravity: Cited
  readonly gravityBasis: 'dry' | 'green'
  /** Shrinkage from green to oven-dry, as a share of the green size. */
  readonly radialFraction: Cited
  readonly tangentialFraction: Cited
  readonly volumetricFraction: Cited
  /** Along the grain at 12 % moisture, from bending (shear included); null: not known. */
  readonly elasticityGPa: Cited | null
}

/** How the slab lies in the log, seen from its face: which shrinkage runs across its width. */
export type Sawn = 'flat' | 'between' | 'quarter'

/**
 * Shrinkage across the width of a slab, green to oven-dry, as a share of the green width.
 * @param sawn  flat: rings along the face, tangential; quarter: rings on edge, radial; between: their mean (common
 *              practice, no source)
 * Rules: WOOD-3.
 */
export function acrossShrinkageFraction(
  { radialFraction, tangentialFraction }: Pick<Species, 'radialFraction' | 'tangentialFraction'>,
  sawn: Sawn,
): number {
  if (sawn === 'flat') return tangentialFraction.value
  if (sawn === 'quarter') return radialFraction.value
  return (radialFraction.value + tangentialFraction.value) / 2
}
