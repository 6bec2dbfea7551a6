import type { Stroke } from './sheet'

/**
 * Line widths in two steps of about 2:1 (ISO 128-20 series 0.25, 0.35, 0.5, 0.7), so that kinds of line keep apart
 * on a copied sheet.
 */
export const STROKES = {
  /** Edge of the wood. */
  outline: { widthMm: 0.5 },
  /** Edge of a hole in the wood. */
  opening: { widthMm: 0.35 },
  finished: { widthMm: 0.35 },
  blank: { widthMm: 0.25, dashMm: [2.4, 1.2] },
  cut: { widthMm: 0.7, dashMm: [7, 1.4, 1.4, 1.4] },
  datum: { widthMm: 0.35, dashMm: [9, 1.6, 0.6, 1.6] },
  thin: { widthMm: 0.18 },
  helper: { widthMm: 0.18, ink: 'grey' },
  hatch: { widthMm: 0.18 },
  frame: { widthMm: 0.25 },
  rule: { widthMm: 0.5 },
} as const satisfies Readonly<Record<string, Stroke>>
