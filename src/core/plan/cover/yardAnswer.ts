import type { Slab } from '../schema'
import type { TableSize } from './coverTasks'

export type YardAnswer =
  | { readonly kind: 'yes'; readonly spareMm: number }
  /** Short by so much, however the slab lies. */
  | { readonly kind: 'no'; readonly shortMm: number }
  /** Some of the table's length is wide enough, some is not: only a photo or stations can tell. */
  | { readonly kind: 'measure'; readonly between: readonly [narrowestMm: number, widestMm: number] }

/**
 * Does a straight slab serve, by three lengths of tape?
 * @returns null while a length is missing that the answer hangs on
 * Method: a straight slab holds the rectangle of its least width, and nothing wider than its greatest. Half of what is to
 * spare lies on each side. Rules: CHO-4.
 */
export function yardAnswer(
  { lengthMm, narrowestMm, widestMm }: Slab['stock']['tape'],
  table: TableSize,
): YardAnswer | null {
  if (lengthMm === null) return null
  if (lengthMm < table.lengthMm) return { kind: 'no', shortMm: table.lengthMm - lengthMm }
  if (widestMm !== null && widestMm < table.widthMm) return { kind: 'no', shortMm: table.widthMm - widestMm }
  if (narrowestMm === null) return null
  const spareMm = Math.min(lengthMm - table.lengthMm, narrowestMm - table.widthMm) / 2
  if (spareMm >= 0) return { kind: 'yes', spareMm }
  return { kind: 'measure', between: [narrowestMm, widestMm ?? narrowestMm] }
}
