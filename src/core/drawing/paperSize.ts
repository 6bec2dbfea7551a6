export type PaperName = 'a4' | 'letter' | 'a3' | 'tabloid'
export type Orientation = 'portrait' | 'landscape'

export interface PaperSize {
  readonly widthMm: number
  readonly heightMm: number
}

/** Upright sizes. A4, A3: ISO 216. Letter 8.5 × 11 in and Tabloid 11 × 17 in: ANSI/ASME Y14.1 sizes A and B, 25.4 mm to the inch. */
const UPRIGHT: Readonly<Record<PaperName, PaperSize>> = {
  a4: { widthMm: 210, heightMm: 297 },
  a3: { widthMm: 297, heightMm: 420 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
  tabloid: { widthMm: 279.4, heightMm: 431.8 },
}

/**
 * Size of a sheet as it is held.
 * @returns width and height, mm
 * Rules: DRW-1.
 */
export function paperSize(paper: PaperName, orientation: Orientation = 'portrait'): PaperSize {
  const { widthMm, heightMm } = UPRIGHT[paper]
  return orientation === 'portrait' ? { widthMm, heightMm } : { widthMm: heightMm, heightMm: widthMm }
}
