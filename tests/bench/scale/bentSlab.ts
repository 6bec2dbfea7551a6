import type { Truth } from './photoTruth'

/** The slab bent as the formulas of core/photo/README.md say, by its bounding box. Heights over its plane, mm. */
export interface BentSlab {
  readonly bowMm: number
  readonly twistMm: number
  /** What no formula of the program foresees: a lean to one end, and shoulders that straightedge readings miss. */
  readonly leanMm: number
  readonly shoulderMm: number
}

/** No slab bends quite as the formulas do: by this share of its bend, one standard deviation each way. */
export const UNFORESEEN_SHARE = 0.03

export interface SlabBox {
  readonly middle: readonly [number, number]
  readonly halfLengthMm: number
  readonly halfWidthMm: number
}

export function slabBox({ slab }: Truth): SlabBox {
  const xs = slab.top_outline_mm.map((p) => p[0])
  const ys = slab.top_outline_mm.map((p) => p[1])
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  return { middle: [(x0 + x1) / 2, (y0 + y1) / 2], halfLengthMm: (x1 - x0) / 2, halfWidthMm: (y1 - y0) / 2 }
}

export function bentHeightMm(
  box: SlabBox,
  { bowMm, twistMm, leanMm, shoulderMm }: BentSlab,
  x: number,
  y: number,
): number {
  const s = (x - box.middle[0]) / box.halfLengthMm
  const t = (y - box.middle[1]) / box.halfWidthMm
  // Both reach 1: the lean at s = ±0.58, the shoulders at ±0.71; neither moves the middle or the ends.
  const unforeseen = leanMm * 2.6 * (s - s ** 3) + shoulderMm * 4 * (s * s - s ** 4)
  return bowMm * (1 - s * s) + twistMm * s * t + unforeseen
}
