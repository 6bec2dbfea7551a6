import type { Dye } from './batchPlan'
import type { PourGap } from './gapVolume'
import type { PourSetting } from './pourSetting'
import type { ProductSheet } from './productSheet'
import type { WakingDay } from './wakingHours'
import type { FormBase, FormPiece } from './woodUplift'

/** A layer changed by hand; null leaves that figure to the plan. */
export interface HandLayer {
  readonly depthMm: number | null
  /** Hours from midnight before the first pour. */
  readonly startHour: number | null
}

/** All that a pour plan follows from: plain values, nothing of the document. */
export interface PourPlanInput {
  readonly sheet: ProductSheet
  readonly gaps: readonly PourGap[]
  /** Height of the cast above the floor of the form. */
  readonly castDepthMm: number
  /** Thinnest cast that would still do (finished thickness and flattening); null: none thinner. */
  readonly leastCastDepthMm: number | null
  /** Inside height of the form; null: not known yet. */
  readonly formHeightMm: number | null
  /** What was measured on a photo of the dry fit; replaces the volume of the gaps. */
  readonly measuredLitres: number | null
  /** Left in buckets and lost, as a share of what fills the gaps. */
  readonly lossFraction: number
  readonly setting: PourSetting
  /** Null: as warm as the room. */
  readonly resinC: number | null
  /** Hour of the first day at which the first layer is poured, unless that layer's start is set by hand. */
  readonly firstStartHour: number
  readonly day: WakingDay
  /** From the first stir to the last drop of one batch. */
  readonly handlingMinutes: number
  readonly bucketKg: number | null
  readonly dye: Dye | null
  readonly pieces: readonly FormPiece[]
  readonly base: FormBase | null
  /** Bought in addition to the need, as a share. */
  readonly packMarginFraction: number
  /** Resin already on the shelf, litres of mix. */
  readonly haveLitres: number
  readonly layers: readonly HandLayer[]
  /** The maker's explicit word that a layer may be deeper than the sheet, as far as the model allows. */
  readonly beyondSheet: boolean
}
