/** Font sizes, mm. Figures on a drawing have capitals of 2.5 mm, the least that ISO 3098 letters an A4 drawing with. */
export const SIZE = {
  title: 6.6,
  verdict: 4.4,
  heading: 4.2,
  figure: 3.8,
  body: 3.5,
  note: 3.1,
  total: 5,
} as const

/** Sizes of a column of words and figures: as usual, and larger where a page has nothing else on it. */
export interface ColumnStyle {
  readonly headingMm: number
  readonly bodyMm: number
  readonly totalMm: number
  readonly airMm: number
}
export const USUAL_COLUMN: ColumnStyle = { headingMm: SIZE.heading, bodyMm: SIZE.body, totalMm: 5, airMm: 2 }
export const LARGE_COLUMN: ColumnStyle = { headingMm: 5.4, bodyMm: 4.4, totalMm: 6.6, airMm: 3 }

/** Blank border round a sheet, mm. Common practice, no source: printers need 6, a clip or a hole more. */
export const MARGIN_MM = 12

/** Air between a column of a page and the next, mm. */
export const COLUMN_AIR_MM = 9
