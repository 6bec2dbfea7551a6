import type { Point } from '../geometry'
import type { Orientation, PaperName } from './paperSize'

/** Two inks only: what has to be read, and lines that stand back. Both print in black and white. */
export type Ink = 'black' | 'grey'
export type Fill = 'white' | 'black' | 'shade'

export interface Stroke {
  readonly widthMm: number
  /** Lengths of dashes and gaps, mm, in turn; none: a full line. */
  readonly dashMm?: readonly number[]
  readonly ink?: Ink
}

export type Segment = readonly [from: Point, to: Point]
export type TextWeight = 'regular' | 'bold'
export type TextAnchor = 'start' | 'middle' | 'end'

/** Separate straight lines of one stroke: ticks, hatching. */
export interface SegmentsItem {
  readonly kind: 'segments'
  readonly segments: readonly Segment[]
  readonly stroke: Stroke
}

export interface PolylineItem {
  readonly kind: 'polyline'
  readonly points: readonly Point[]
  readonly stroke: Stroke
}

/** One or more closed rings; a place is filled when an odd number of rings is round it. */
export interface PolygonItem {
  readonly kind: 'polygon'
  readonly rings: readonly (readonly Point[])[]
  readonly stroke: Stroke | null
  readonly fill: Fill | null
}

export interface CircleItem {
  readonly kind: 'circle'
  readonly centre: Point
  readonly radiusMm: number
  readonly stroke: Stroke | null
  readonly fill: Fill | null
}

/** One line of text. `at` is on the baseline; the text turns about it (radians, x towards y). */
export interface TextItem {
  readonly kind: 'text'
  readonly text: string
  readonly at: Point
  /** Size of the font (its em), mm; capitals are 0.66 of it. */
  readonly sizeMm: number
  readonly weight: TextWeight
  readonly anchor: TextAnchor
  readonly angleRad: number
  /** White ground behind the text, so that lines drawn before it do not run through the letters. */
  readonly plate: boolean
  /** The room it was given, mm: a wider text is a fault of the sheet. */
  readonly maxWidthMm?: number
  /** White letters on black. */
  readonly reversed?: boolean
}

export type DrawItem = SegmentsItem | PolylineItem | PolygonItem | CircleItem | TextItem

/** One side of paper, drawn in mm from its top-left corner, y down; items lie over one another in order. */
export interface Sheet {
  readonly title: string
  readonly paper: PaperName
  readonly orientation: Orientation
  readonly widthMm: number
  readonly heightMm: number
  readonly items: readonly DrawItem[]
}

/** An upright box on the sheet, mm. */
export interface Box {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}
