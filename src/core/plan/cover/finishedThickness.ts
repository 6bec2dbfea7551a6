import type { Option, Slab } from '../schema'
import { dryingOf } from './drying'

/** How far flattening may take more or less than was typed, mm: one deviation. Common practice, no source. */
const FLATTENING_SD_MM = 2

/** How far a thickness by tape may be off, mm: one deviation. Common practice, no source. */
const THICKNESS_SD_MM = 1

export interface FinishedThickness {
  readonly thicknessMm: number
  readonly sdMm: number
}

/**
 * What is left of a slab's thickness on the finished top.
 * @returns mm with one standard deviation, below 0 where nothing is left; null while the slab is not measured
 * Method: rough thickness − flattening − cleaning after the cast. Rules: CHO-1.
 */
export function finishedThickness(
  slab: Pick<Slab, 'thicknessMm' | 'moistureFraction' | 'species' | 'stock'>,
  { cleaningMm }: Pick<Option['cover'], 'cleaningMm'>,
): FinishedThickness | null {
  const { thicknessMm, stock } = slab
  if (thicknessMm === null) return null
  const { lossFraction, sdFraction } = dryingOf(slab)
  return {
    thicknessMm: thicknessMm * (1 - lossFraction) - stock.flatteningMm - cleaningMm,
    sdMm: Math.hypot(FLATTENING_SD_MM, THICKNESS_SD_MM, thicknessMm * sdFraction),
  }
}
