import { deepestLayer, type PourConditions } from './deepestLayer'
import type { PourPeak } from './pourPeak'
import type { SheetFit } from './sheetFit'

/** How deep a layer may be in given conditions, and why. */
export interface DepthLimit {
  /** What the plan uses: with the margin, capped. */
  readonly planMm: number
  /** What the model gives, before the margin; 0 and Infinity as in DeepestLayer. */
  readonly modelMm: number
  readonly bandMm: readonly [least: number, greatest: number]
  readonly sheetMm: number
  readonly cappedBy: 'sheet' | 'model'
  /** Peak of the model's own deepest layer. */
  readonly peak: PourPeak | null
}

/** Depth that is planned, of the depth that would just reach the limit. */
export const DEPTH_MARGIN = 0.9
/** Even with the override the plan stays below so many times the sheet's depth: the model is not trusted further. */
const MOST_BEYOND_SHEET = 2

/**
 * Deepest layer that the plan uses: the smaller of the sheet's and the model's, times 0.9; of the band of activation
 * energies always the end that allows less.
 * @param beyondSheet  the maker's explicit override: in the cold, or with fans, the model may go beyond the sheet
 * Rules: RES-12, RES-17.
 */
export function depthLimit(
  fit: SheetFit,
  conditions: PourConditions,
  sheetMm: number,
  beyondSheet: boolean,
): DepthLimit {
  const { depthMm, bandMm, peak } = deepestLayer(fit, conditions, sheetMm)
  const capMm = beyondSheet ? sheetMm * MOST_BEYOND_SHEET : sheetMm
  const [safeMm] = bandMm
  return {
    planMm: Math.min(safeMm, capMm) * DEPTH_MARGIN,
    modelMm: depthMm,
    bandMm,
    sheetMm,
    cappedBy: safeMm < capMm ? 'model' : 'sheet',
    peak,
  }
}
