import type { BatchPlan } from './batchPlan'
import type { DepthLimit } from './depthLimit'
import type { HeatChart } from './heatChart'
import type { LookTime } from './lookTimes'
import type { MixParts, MixShares } from './mixShares'
import type { ResinNotice } from './notice'
import type { PackChoice } from './packChoice'
import type { ReadingTable } from './readingActions'
import type { SheetFit } from './sheetFit'
import type { StartHourPeak } from './startHours'
import type { ThinnerCast } from './thinnerCast'
import type { HoldDown } from './woodUplift'

/** Amount of resin for the whole cast. */
export interface ResinNeed {
  /** What fills the gaps, and what is mixed for it with the loss. */
  readonly gapLitres: number
  readonly mixLitres: number
  /** Null without densities. */
  readonly massKg: number | null
  readonly parts: MixParts
}

/** One layer of the plan. Hours from midnight before the first pour. */
export interface LayerPlan {
  /** Counted from 1. */
  readonly layer: number
  readonly fromMm: number
  readonly toMm: number
  readonly depthMm: number
  readonly isByHand: boolean
  readonly need: ResinNeed
  readonly batches: BatchPlan
  readonly startHour: number
  /** Whether the layer below must be scuffed before this one is poured. */
  readonly scuffBefore: boolean
  readonly corePeakC: number
  /** Over the band of activation energies. */
  readonly corePeakBandC: readonly [least: number, greatest: number]
  readonly surfacePeakC: number
  readonly peakHour: number
  readonly peakBandHours: readonly [earliest: number, latest: number]
  readonly gelHour: number | null
  readonly coolHour: number | null
  readonly readyHour: number | null
  readonly windowEndHour: number | null
  readonly looks: readonly LookTime[]
  readonly widestName: string
  readonly narrowestName: string
}

/** Heat, layers and dates; missing as a whole when the sheet or the room does not allow a simulation. */
export interface PourHeat {
  readonly fit: SheetFit
  readonly limit: DepthLimit
  readonly layers: readonly LayerPlan[]
  readonly chart: HeatChart
  readonly readings: ReadingTable | null
  readonly demouldHour: number | null
  readonly flattenHour: number | null
  readonly thinner: ThinnerCast | null
  /** Where the room swings: the hottest core of the first layer by hour of the pour. */
  readonly startHours: readonly StartHourPeak[]
}

export interface PourPlanResult {
  readonly notices: readonly ResinNotice[]
  readonly shares: MixShares
  /** Null without usable gaps. */
  readonly need: ResinNeed | null
  readonly heat: PourHeat | null
  readonly holdDown: readonly HoldDown[]
  readonly packs: PackChoice | null
}
