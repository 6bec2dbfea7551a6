import { InvariantError } from '../units'
import { batchPlan } from './batchPlan'
import { lookTimes } from './lookTimes'
import type { MixShares } from './mixShares'
import type { ScheduledPour } from './pourLayers'
import type { PourPlanInput } from './pourPlanInput'
import type { LayerPlan } from './pourPlanResult'
import { resinNeed } from './resinNeed'
import { roomAtC } from './roomTemperature'
import type { SheetFit } from './sheetFit'

export interface LayerContext {
  readonly input: PourPlanInput
  readonly shares: MixShares
  readonly fit: SheetFit
  readonly pour: ScheduledPour
  /** Measured litres over computed litres. */
  readonly scale: number
}

const between = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
]

/**
 * One layer of the plan: what to mix, when, and how hot it gets.
 * @param index  from 0
 * Rules: RES-16 to RES-18.
 */
export function layerPlan({ input, shares, fit, pour, scale }: LayerContext, index: number): LayerPlan {
  const found = pour.layers[index]
  if (found === undefined) throw new InvariantError('no such layer', { index })
  const { filled, timing, bandPeaks } = found
  const { fromMm, toMm, isByHand, gaps } = filled
  const { startHour, peak } = timing
  const roomC = roomAtC(input.setting.room, startHour)
  const resinC = input.resinC ?? roomC
  const need = resinNeed(input.lossFraction, shares, gaps.gapLitres * scale)
  const peakHours = bandPeaks.map(({ coreHour }) => coreHour)
  const { sheet, handlingMinutes, bucketKg, dye } = input
  const { chemistry } = fit.nominal
  const litres = need.mixLitres
  return {
    layer: index + 1,
    fromMm,
    toMm,
    depthMm: toMm - fromMm,
    isByHand,
    need,
    batches: batchPlan({ sheet, shares, chemistry, litres, roomC, resinC, handlingMinutes, bucketKg, dye }),
    startHour,
    scuffBefore: startHour > (pour.layers[index - 1]?.timing.windowEndHour ?? Infinity),
    corePeakC: peak.coreC,
    corePeakBandC: between(bandPeaks.map(({ coreC }) => coreC)),
    surfacePeakC: peak.surfaceC,
    peakHour: peak.coreHour,
    peakBandHours: between(peakHours),
    gelHour: timing.gelHour,
    coolHour: timing.coolHour,
    readyHour: timing.readyHour,
    windowEndHour: timing.windowEndHour,
    looks: lookTimes(startHour, peakHours, pour.schedule.trace),
    widestName: gaps.widestName,
    narrowestName: gaps.narrowestName,
  }
}
