import { depthLimit } from './depthLimit'
import type { PourConditions } from './deepestLayer'
import { isUsableGap } from './gapVolume'
import { heatChart } from './heatChart'
import type { ScheduleCase } from './layerSchedule'
import { leastLayers } from './layerDepths'
import { layerGaps } from './layerGaps'
import { mixShares, type MixShares } from './mixShares'
import { notice, type ResinNotice } from './notice'
import { packsForNeed } from './packsForNeed'
import { MOST_LAYERS, pourLayers } from './pourLayers'
import { inputNotices, needNotices, placeNotices } from './inputNotices'
import { layerNotices, planNotices } from './pourNotices'
import type { PourPlanInput } from './pourPlanInput'
import type { PourHeat, PourPlanResult, ResinNeed } from './pourPlanResult'
import { sheetNotices } from './productSheet'
import { readingActions } from './readingActions'
import { GENERIC_CHEMISTRY } from './resinChemistry'
import { layerPlan } from './layerPlan'
import { resinNeed } from './resinNeed'
import { roomAtC } from './roomTemperature'
import { fitSheet, type SheetFit } from './sheetFit'
import { startHours } from './startHours'
import { thinnerCast } from './thinnerCast'
import { holdDown, isUsablePiece, type HoldDown } from './woodUplift'

/** Bars across the form where no base is described, mm. Common practice, no source. */
export const USUAL_BAR_EVERY_MM = 500

/**
 * The whole plan of a cast: how much, in how many layers, how hot, and when.
 * @param input  plain values; figures that cannot be are told in the notices, and what does not need them is given
 * @param fit    a fit made earlier of the same sheet, or from the log; null: the sheet is fitted here
 * @returns the plan; every figure of heat and time is an estimate of a generic chemistry fitted to the sheet
 * Rules: RES-4 to RES-22.
 */
export function pourPlan(input: PourPlanInput, fit: SheetFit | null = null): PourPlanResult {
  const shares = mixShares(input.sheet)
  const first = [...sheetNotices(input.sheet), ...inputNotices(input)]
  const usable = { ...input, gaps: input.gaps.filter(isUsableGap) }
  const need = wholeNeed(usable, shares)
  const isBlocked = need === null || first.some(({ severity }) => severity === 'blocker')
  const { value: heat, notices } = isBlocked ? NO_HEAT : pourHeat(usable, shares, need, fit)
  const levelsMm = heat === null ? [input.castDepthMm] : heat.layers.map(({ toMm }) => toMm)
  const pieces = piecesHeld(input, shares, levelsMm)
  return {
    notices: [
      ...first,
      ...shares.notices,
      ...needNotices(input, need),
      ...notices,
      ...planNotices(input, pieces, levelsMm, resinDensity(shares)),
    ],
    shares,
    need,
    heat,
    holdDown: pieces,
    packs: need === null ? null : packsForNeed(need.mixLitres, { ...input, packs: input.sheet.packs }),
  }
}

const resinDensity = (shares: MixShares): number =>
  shares.mixedDensityKgPerM3 ?? GENERIC_CHEMISTRY.densityKgPerM3

function wholeNeed(input: PourPlanInput, shares: MixShares): ResinNeed | null {
  const isUsable = input.castDepthMm > 0 && Number.isFinite(input.castDepthMm) && input.lossFraction >= 0
  if (!isUsable || input.gaps.length === 0) return null
  const { gapLitres } = layerGaps(input.gaps, 0, input.castDepthMm, 1)
  return resinNeed(input.lossFraction, shares, input.measuredLitres ?? gapLitres)
}

function piecesHeld(
  input: PourPlanInput,
  shares: MixShares,
  levelsMm: readonly number[],
): readonly HoldDown[] {
  return holdDown(
    input.pieces.filter(isUsablePiece),
    levelsMm,
    resinDensity(shares),
    input.base?.barEveryMm ?? USUAL_BAR_EVERY_MM,
  )
}

interface HeatFound {
  readonly value: PourHeat | null
  readonly notices: readonly ResinNotice[]
}

const NO_HEAT: HeatFound = { value: null, notices: [] }

function pourHeat(
  input: PourPlanInput,
  shares: MixShares,
  need: ResinNeed,
  given: SheetFit | null,
): HeatFound {
  const { sheet, setting } = input
  const firstStartHour = input.layers[0]?.startHour ?? input.firstStartHour
  const fit = given ?? fitSheet(sheet, shares.mixedDensityKgPerM3)
  const place = placeNotices(input, fit)
  if (place.some(({ severity }) => severity === 'blocker')) return { value: null, notices: place }
  const whole = layerGaps(input.gaps, 0, input.castDepthMm, 1)
  const conditions: PourConditions = {
    setting,
    startHour: firstStartHour,
    resinC: input.resinC ?? roomAtC(setting.room, firstStartHour),
    widthMm: whole.widestMm,
  }
  const limit = depthLimit(fit, conditions, sheet.deepestLayerMm, input.beyondSheet)
  const wish: ScheduleCase = {
    fit,
    setting,
    resinC: input.resinC,
    firstStartHour,
    day: input.day,
    recoatLeastHours: sheet.recoatLeastHours,
    recoatGreatestHours: sheet.recoatGreatestHours,
    demouldHours: sheet.demouldHours,
    workHours: input.handlingMinutes / 60,
  }
  const leastCount = leastLayers(input, need.massKg, input.castDepthMm, limit.planMm)
  if (leastCount > MOST_LAYERS) return { value: null, notices: [...place, tooMany(leastCount)] }
  const pour = pourLayers(input, wish, limit, leastCount)
  const scale = input.measuredLitres === null ? 1 : input.measuredLitres / Math.max(1e-9, whole.gapLitres)
  const layers = pour.layers.map((_, index) => layerPlan({ input, shares, fit, scale, pour }, index))
  const hours = startHours(fit, input, layers[0]?.depthMm ?? limit.planMm, conditions)
  const thinner = thinnerCast(input, limit, need.massKg, layers.length)
  return {
    value: {
      fit,
      limit,
      layers,
      chart: heatChart(pour.schedule, [pour.low, pour.high]),
      readings: readingActions(fit.nominal, conditions, sheet.deepestLayerMm, limit.modelMm),
      demouldHour: pour.schedule.demouldHour,
      flattenHour: pour.schedule.flattenHour,
      thinner,
      startHours: hours,
    },
    notices: [...place, ...layerNotices({ input, limit, pour, layers, hours, thinner })],
  }
}

const tooMany = (layers: number): ResinNotice =>
  notice('layers-too-many', 'blocker', { layers: Math.min(layers, 9999), greatest: MOST_LAYERS })
