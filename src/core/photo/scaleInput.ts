import type { PxPoint } from '../geometry'
import type { LayoutProblemCode } from './markLayout'

/** What a slab's maker said and clicked, as the scale needs it; the plan's slab and photo fit these shapes. */
export interface ScaleInput {
  readonly marks: readonly { readonly id: string; readonly heightMm: number }[]
  readonly tapedDistances: readonly TapedDistance[]
  readonly boards: readonly BoardReference[]
  readonly observations: readonly {
    readonly markId: string
    readonly atPx: PxPoint
    /** Standard deviation of this one, px of the photo; `clickSdPx` when left out. */
    readonly sdPx?: number
  }[]
  readonly imageWidthPx: number
  readonly imageHeightPx: number
  /** From the file's EXIF, 35 mm equivalent; null when absent. A prior, never required. */
  readonly focalLength35mm?: number | null
  /** Straight edges on the slab (chalk line, track), three or more points each: they tell the lens bow. */
  readonly straightLines?: readonly {
    readonly id: string
    readonly pointsPx: readonly PxPoint[]
    readonly sdPx?: number
    /** How far it stands above the face (a board's edge), mm. */
    readonly heightMm?: number
  }[]
  readonly flatness?: Flatness
  /** Standard deviation of a click, px of the photo; 1.5 when left out (0.3 once refined). */
  readonly clickSdPx?: number
  /** Standard deviation of a taped length, mm; 0.5 when left out. */
  readonly tapeSdMm?: number
  /** Any points that span the slab (its outline), px: they tell its length and middle for bow and twist. */
  readonly slabSpanPx?: readonly PxPoint[]
  /** Two points along the slab (the chalked datum), px: straightedge and winding sticks are laid along and across it. */
  readonly slabAxisPx?: readonly [PxPoint, PxPoint]
}

export interface TapedDistance {
  readonly id: string
  readonly markIds: readonly [string, string]
  readonly lengthMm: number
}

/** A rectangle of known size: corners in order round it, the first side is the length. */
export interface BoardReference {
  readonly id: string
  readonly cornerIds: readonly [string, string, string, string]
  readonly lengthMm: number
  readonly widthMm: number
}

/**
 * How flat the face is known to be. `unknown`: 8 mm either way (`DEFAULT_OUT_OF_FLAT_MM`). `read`: by a straightedge
 * along the slab (how much the middle stands above the ends) and winding sticks (how much the corner at the far right
 * of the slab's length direction stands above the mean plane: a quarter of what the sticks show).
 */
export type Flatness =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'read'; readonly bowMm: number; readonly twistMm: number; readonly readingSdMm: number }

export const DEFAULT_OUT_OF_FLAT_MM = 8

export type ScaleProblemCode =
  | 'reference-missing'
  | 'reference-too-few-marks'
  | 'reference-collinear'
  | 'reference-crossed'
  | 'reference-mirrored'
  | 'reference-too-small'
  | 'reference-small'
  | 'reference-to-one-side'
  | 'reference-not-used'
  | 'reference-unsolvable'
  | 'length-alone'
  | 'tilt-assumed'
  | 'slab-clipped'
  | 'board-corners-not-seen'
  | LayoutProblemCode
  | 'distance-disagrees'
  | 'distances-disagree'
  | 'tilt-too-steep'
  | 'focal-unlikely'

/** Something to tell the maker about the scale: data; the sentences are made elsewhere. */
export interface ScaleProblem {
  readonly code: ScaleProblemCode
  /** blocker: no scale comes out; warning: it comes out and is doubtful; note: for information. */
  readonly severity: 'blocker' | 'warning' | 'note'
  readonly values: Readonly<Record<string, string | number>>
  readonly markIds: readonly string[]
  readonly distanceIds: readonly string[]
}

export const scaleProblem = (
  code: ScaleProblemCode,
  severity: ScaleProblem['severity'],
  at: Partial<Pick<ScaleProblem, 'values' | 'markIds' | 'distanceIds'>> = {},
): ScaleProblem => ({ code, severity, values: {}, markIds: [], distanceIds: [], ...at })
