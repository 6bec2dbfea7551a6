import type { PxPoint, Region, Ring, SlabPoint } from '../geometry'
import type { Verdict } from '../layout'
import type { SlabFrame, SlabScale } from '../photo'
import type { EdgeStretch } from './accuracy/edgeStretches'
import type { BuildResult } from './build/buildResult'
import type { BuildTask } from './build/buildTask'
import type { Issue } from './issue'
import type { Part } from './part'
import type { PourResult } from './pour/answerPour'
import type { PourTask } from './pour/pourTask'
import type { FootprintResult, PiecesResult, CoverageResult, ResinResult } from './tableResult'

export interface TapedDistanceCheck {
  readonly distanceId: string
  readonly fromName: string
  readonly toName: string
  readonly statedMm: number
  /** Length between the solved positions of the two marks. */
  readonly foundMm: number
  /** Standard deviation of the length as it is read off the photo: its scale, and one click at each end. */
  readonly sdMm: number
}

export interface SlabScaleResult {
  readonly photoId: string
  /** Camera and slab frame: slabPointFromPx(frame, px) and pxFromSlabPoint(frame, point) of core/photo. */
  readonly frame: SlabFrame
  readonly scale: SlabScale
  readonly markPositions: readonly MarkPosition[]
  readonly distanceChecks: readonly TapedDistanceCheck[]
  /** Photo pixels per mm at the middle of the marks. */
  readonly pxPerMm: number
  readonly datum: {
    readonly fromPx: PxPoint
    readonly toPx: PxPoint
    readonly lengthMm: number
    readonly sdMm: number
  }
}

/** A later photo of the slab, in the slab frame of the first: what pixels show of it, and how well its marks fit. */
export interface LaterPhotoResult extends SlabScaleResult {
  readonly sharedMarks: number
  /** How far the shared marks are from where the first photo has them, on the mean and at most, mm. */
  readonly rmsMm: number
  readonly worstMm: number
}

export interface MarkPosition {
  readonly markId: string
  readonly name: string
  readonly at: SlabPoint
}

export interface SlabVoid {
  readonly traceId: string
  readonly kind: 'void' | 'crack' | 'bark'
  readonly name: string
  readonly ring: Ring<SlabPoint>
  readonly areaMm2: number
  /** Depth of the hole from the top face, mm; null: right through. */
  readonly depthMm: number | null
}

/** A place on the slab that the table is to have or not to have; it stays wood. */
export interface SlabPlace {
  readonly traceId: string
  readonly kind: 'defect' | 'figure'
  readonly name: string
  readonly ring: Ring<SlabPoint>
  readonly areaMm2: number
}

export interface SlabShapeResult {
  /** What is left of the slab once decayed wood is cut back. */
  readonly outline: Ring<SlabPoint>
  /** As it was traced. */
  readonly tracedOutline: Ring<SlabPoint>
  readonly voids: readonly SlabVoid[]
  readonly places: readonly SlabPlace[]
  /** Top face with through and partial voids taken out. */
  readonly wood: readonly Region<SlabPoint>[]
  readonly grossAreaMm2: number
  readonly woodAreaMm2: number
  /** Extent along and across the datum. */
  readonly lengthMm: number
  readonly widthMm: number
}

/** The edge of a void in short stretches, and how deep it is; null: right through. */
export interface VoidEdge {
  readonly depthMm: number | null
  readonly edge: readonly EdgeStretch[]
}

/** Standard deviations; the screen states twice as much. */
export interface SlabAccuracy {
  readonly lengthSdMm: number
  readonly widthSdMm: number
  readonly grossAreaSdMm2: number
  readonly woodAreaSdMm2: number
  /** The traced outline in short stretches, for what lies on the slab. */
  readonly edge: readonly EdgeStretch[]
  readonly voids: readonly VoidEdge[]
}

/** Standard deviations, as far as the photo goes. */
export interface OptionAccuracy {
  /** Of the spare wood, or of how far wood is short; null where a live edge is kept or the table is off the slab. */
  readonly marginSdMm: number | null
  /**
   * How likely wood reaches all along every side that wants it, 0 to 1; null where a live edge is kept, the table is off
   * the slab, or it is to be filled.
   */
  readonly coverChance: number | null
  /** Of the slab's wood in the blank. */
  readonly woodAreaSdMm2: number
  /** Of the resin to mix; null while that is not known. */
  readonly resinSdLitres: number | null
}

export interface SlabResult {
  readonly slabId: string
  readonly scale: Part<SlabScaleResult>
  /** Of each photo after the first, by its id; empty while the first has no scale. */
  readonly laterPhotos: ReadonlyMap<string, Part<LaterPhotoResult>>
  readonly shape: Part<SlabShapeResult>
  /** Null where no photo says anything: a slab by stations. */
  readonly accuracy: Part<SlabAccuracy | null>
}

export interface OptionResult {
  readonly optionId: string
  readonly footprint: Part<FootprintResult>
  readonly pieces: Part<PiecesResult>
  readonly coverage: Part<CoverageResult>
  readonly verdict: Part<Verdict>
  readonly resin: Part<ResinResult>
  readonly accuracy: Part<OptionAccuracy | null>
  /** What a worker is asked for the pour, and its answer: pending until it is there. */
  readonly pourTask: Part<PourTask>
  readonly pour: Part<PourResult>
  /** The same for form, weight, stance, work and price. */
  readonly buildTask: Part<BuildTask>
  readonly build: Part<BuildResult>
}

export interface PlanResult {
  readonly slabs: ReadonlyMap<string, SlabResult>
  readonly options: ReadonlyMap<string, OptionResult>
  readonly issues: readonly Issue[]
}
