import { dyeSpread } from './batchPlan'
import type { DepthLimit } from './depthLimit'
import type { LayerGaps } from './layerGaps'
import { COOL_WITHIN_K, LONGEST_WAIT_HOURS, type LayerTiming } from './layerSchedule'
import { notice, when, type Notices } from './notice'
import { isTooHot, type LayerInTime, type ScheduledPour } from './pourLayers'
import type { PourPlanInput } from './pourPlanInput'
import type { LayerPlan } from './pourPlanResult'
import { roomAtC, warmestRoomC } from './roomTemperature'
import type { StartHourPeak } from './startHours'
import type { ThinnerCast } from './thinnerCast'
import { isAwake } from './wakingHours'
import { baseLiftMm, type HoldDown } from './woodUplift'

/** A base that lifts more than this lets resin under the wood. No source. */
const BASE_LIFT_MM = 0.5
const DYE_SPREAD = 0.05
/** A different hour of pouring is named when it keeps the core this much cooler. */
const WORTH_WAITING_K = 5
/** Width of a gap whose sides no longer cool it much, over the depth of the layer. */
const WIDE_PER_DEPTH = 3

/** What the layers as planned call for. Rules: RES-16, RES-17, RES-18. */
export function layerNotices(found: FoundLayers): Notices {
  const { input, limit, pour, layers, hours, thinner } = found
  return [
    ...limitNotices(input, limit),
    ...widthNotices(input, pour),
    ...pour.layers.flatMap(({ filled }) => filled.gaps.notices),
    ...layers.flatMap((layer) => depthNotices(input, limit, layer)),
    ...pour.layers.flatMap((layer, index) => heatNotices(layer, index + 1)),
    ...layers.flatMap((layer, index) => stepNotices(input, pour, layer, index)),
    ...layers.flatMap((layer) => handlingNotices(input, layer)),
    ...dyeNotices(input, layers),
    ...cooler(layers[0], hours),
    ...(thinner === null ? [] : [notice('thinner-cast-saves-a-pour', 'note', { ...thinner })]),
  ]
}

/** All that the notices about layers look at. */
export interface FoundLayers {
  readonly input: PourPlanInput
  readonly limit: DepthLimit
  readonly pour: ScheduledPour
  readonly layers: readonly LayerPlan[]
  readonly hours: readonly StartHourPeak[]
  readonly thinner: ThinnerCast | null
}

function limitNotices(input: PourPlanInput, limit: DepthLimit): Notices {
  const modelMm = limit.modelMm
  if (modelMm <= limit.sheetMm || modelMm === Infinity || input.beyondSheet) return []
  return [notice('kept-to-sheet', 'note', { modelMm, sheetMm: limit.sheetMm })]
}

function widthNotices(input: PourPlanInput, pour: ScheduledPour): Notices {
  const widest = pour.layers
    .map(({ filled }) => filled.gaps)
    .reduce<LayerGaps | null>(
      (best, gaps) => (best === null || gaps.widestMm > best.widestMm ? gaps : best),
      null,
    )
  if (widest === null) return []
  const { widestMm, widestName, hotDepthMm } = widest
  const { testWidthMm } = input.sheet
  const values = { gapName: widestName, widthMm: widestMm }
  if (testWidthMm === null)
    return when(widestMm > WIDE_PER_DEPTH * hotDepthMm, notice('test-width-unknown', 'warning', values))
  return when(widestMm > testWidthMm, notice('gap-wider-than-test', 'warning', { ...values, testWidthMm }))
}

function depthNotices(input: PourPlanInput, limit: DepthLimit, layer: LayerPlan): Notices {
  const { depthMm } = layer
  const { deepestLayerMm, leastLayerMm, greatestMassKg } = input.sheet
  const at = { layer: layer.layer, depthMm }
  const massKg = layer.need.massKg ?? 0
  return [
    ...when(
      depthMm > deepestLayerMm + 0.01,
      notice('beyond-sheet', 'warning', { ...at, sheetMm: deepestLayerMm }),
    ),
    ...when(
      depthMm > limit.planMm + 0.01,
      notice('layer-deeper-than-limit', 'warning', { ...at, limitMm: limit.planMm }),
    ),
    ...when(
      depthMm < (leastLayerMm ?? 0) - 0.01,
      notice('layer-thinner-than-least', 'warning', { ...at, leastMm: leastLayerMm ?? 0 }),
    ),
    ...when(
      massKg > (greatestMassKg ?? Infinity),
      notice('layer-heavier-than-sheet', 'warning', {
        layer: layer.layer,
        massKg,
        greatestKg: greatestMassKg ?? 0,
      }),
    ),
  ]
}

function heatNotices(layer: LayerInTime, number: number): Notices {
  const { coreC, limitC } = layer.hottest
  return when(isTooHot([layer]), notice('layer-runs-hot', 'warning', { layer: number, coreC, limitC }))
}

function stepNotices(input: PourPlanInput, pour: ScheduledPour, layer: LayerPlan, index: number): Notices {
  const { startHour, peakHour } = layer
  const at = { layer: layer.layer }
  const greatestHours = input.sheet.recoatGreatestHours ?? 0
  const hours = startHour - (pour.layers[index - 1]?.timing.startHour ?? startHour)
  const isNextByHand = typeof input.layers[index + 1]?.startHour === 'number'
  return [
    ...belowNotices(input, pour.layers[index]?.timing, layer),
    ...gelNotices(input, layer, isNextByHand),
    ...when(layer.scuffBefore, notice('window-missed', 'warning', { ...at, hours, greatestHours })),
    ...when(!isAwake(startHour, input.day), notice('pour-while-asleep', 'note', { ...at, hour: startHour })),
    ...when(!isAwake(peakHour, input.day), notice('peak-while-asleep', 'note', { ...at, hour: peakHour })),
  ]
}

function belowNotices(input: PourPlanInput, timing: LayerTiming | undefined, layer: LayerPlan): Notices {
  const belowC = timing?.belowC ?? null
  const roomC = roomAtC(input.setting.room, layer.startHour)
  // By night the resin lags behind a swinging room: only what is above the day's warmest is heat of its own.
  const isHot = belowC !== null && belowC > warmestRoomC(input.setting.room) + COOL_WITHIN_K + 0.5
  const at = { layer: layer.layer }
  return [
    ...when(isHot, notice('poured-on-hot-layer', 'warning', { ...at, belowC: belowC ?? 0, roomC })),
    ...when(timing?.belowIsSoft === true, notice('poured-on-soft-layer', 'warning', at)),
  ]
}

function gelNotices(input: PourPlanInput, layer: LayerPlan, isNextByHand: boolean): Notices {
  const leastHours = input.sheet.recoatLeastHours
  const at = { layer: layer.layer }
  if (layer.gelHour === null) {
    // Below a layer whose start was set by hand, that layer has the warning.
    return when(!isNextByHand, notice('gels-too-slowly', 'warning', { ...at, hours: LONGEST_WAIT_HOURS }))
  }
  const hours = layer.gelHour - layer.startHour
  return when(
    leastHours !== null && hours > leastHours,
    notice('gels-later-than-sheet', 'note', { ...at, hours, leastHours: leastHours ?? 0 }),
  )
}

function handlingNotices(input: PourPlanInput, layer: LayerPlan): Notices {
  const { isInTime, workingMinutes, plus5Minutes } = layer.batches
  const least = Math.min(workingMinutes ?? Infinity, plus5Minutes ?? Infinity)
  const { handlingMinutes } = input
  return when(
    !isInTime,
    notice('handling-too-slow', 'warning', { layer: layer.layer, handlingMinutes, workingMinutes: least }),
  )
}

function dyeNotices(input: PourPlanInput, layers: readonly LayerPlan[]): Notices {
  const batches = layers.map((layer) => layer.batches)
  const greatest = Math.max(0, ...batches.map(({ dye }) => dye?.massFraction ?? 0))
  const allowed = input.sheet.greatestDyeFraction ?? Infinity
  const spread = dyeSpread(batches)
  return [
    ...when(
      greatest > allowed,
      notice('dye-over-greatest', 'warning', { dyeFraction: greatest, greatestFraction: allowed }),
    ),
    ...when(spread > DYE_SPREAD, notice('dye-uneven', 'warning', { percent: spread * 100 })),
  ]
}

function cooler(first: LayerPlan | undefined, hours: readonly StartHourPeak[]): Notices {
  const best = hours.reduce<StartHourPeak | null>(
    (found, next) => (found === null || next.coreC < found.coreC ? next : found),
    null,
  )
  if (first === undefined || best === null || best.coreC > first.corePeakC - WORTH_WAITING_K) return []
  const values = {
    startHour: first.startHour,
    coreC: first.corePeakC,
    betterHour: best.startHour,
    betterCoreC: best.coreC,
  }
  return [notice('start-cooler-hour', 'note', values)]
}

/** Pieces that float, and a base that lifts. Rules: RES-19. */
export function planNotices(
  input: PourPlanInput,
  pieces: readonly HoldDown[],
  levelsMm: readonly number[],
  resinKgPerM3: number,
): Notices {
  const floating = pieces.flatMap(({ pieceName, byLayer }) => {
    const layer = byLayer.findIndex(({ forceN }) => forceN > 0)
    const forceN = Math.max(0, ...byLayer.map((at) => at.forceN))
    return layer === -1 ? [] : [notice('piece-floats', 'warning', { pieceName, layer: layer + 1, forceN })]
  })
  const { base } = input
  const barN = Math.max(0, ...pieces.map(({ forcePerBarN }) => forcePerBarN))
  const depthMm = Math.max(0, ...levelsMm)
  const liftMm = base === null || barN === 0 ? 0 : baseLiftMm(base, barN, depthMm, resinKgPerM3)
  return [...floating, ...when(liftMm > BASE_LIFT_MM, notice('base-lifts', 'warning', { liftMm }))]
}
