import { LayerStack, type StackMoment } from './layerStack'
import { deepestLayerMm, peakAt, scaledDepthMm, type PourConditions } from './deepestLayer'
import { meanRoomC } from './roomTemperature'
import type { FittedResin } from './sheetFit'

/** What a reading of the thermometer gun on the surface means, and what to do at it. */
export interface ReadingAction {
  readonly action: 'watch' | 'cool-early' | 'stay-clear'
  readonly surfaceC: number
  /** The core at that reading, in a pour that is running away. */
  readonly coreC: number
  /** From that reading to the hottest moment of a pour that is running away, hours. */
  readonly leadHours: number
}

export interface ReadingTable {
  /** The surface when the core is at its limit: one number does not fit all set-ups. */
  readonly limitSurfaceC: number
  readonly coreLimitC: number
  readonly actions: readonly ReadingAction[]
}

/** Share of the surface's rise to its limit at which each action is due. */
const SHARES: readonly (readonly [action: ReadingAction['action'], share: number])[] = [
  ['watch', 0.25],
  ['cool-early', 0.5],
  ['stay-clear', 1],
]
/** A pour that runs away, for the lead times: so much deeper than the limit. */
const RUNAWAY_SHARE = 1.2
const LONGEST_HOURS = 336

/**
 * Which surface readings to act on in a set-up.
 * @param limitDepthMm  the layer that just reaches the core limit there, from deepestLayer; null: found here
 * @returns null where no layer reaches the limit
 * Rules: RES-21.
 */
export function readingActions(
  resin: FittedResin,
  conditions: PourConditions,
  sheetDepthMm: number,
  limitDepthMm: number | null,
): ReadingTable | null {
  const roomC = meanRoomC(conditions.setting.room)
  const depthMm = limitDepthMm ?? deepestLayerMm(resin, conditions, scaledDepthMm(resin, sheetDepthMm, roomC))
  if (!(depthMm > 0 && depthMm < Infinity)) return null
  const limitSurfaceC = peakAt(resin, conditions, depthMm).surfaceC
  const runaway = followPour(resin, conditions, depthMm * RUNAWAY_SHARE)
  const hottest = runaway.reduce((best, moment) => (moment.coreC > best.coreC ? moment : best))
  const actions = SHARES.flatMap(([action, share]) => {
    const surfaceC = roomC + share * (limitSurfaceC - roomC)
    const at = runaway.find((moment) => moment.surfaceC >= surfaceC)
    return at === undefined
      ? []
      : [{ action, surfaceC, coreC: at.coreC, leadHours: Math.max(0, hottest.hour - at.hour) }]
  })
  return { limitSurfaceC, coreLimitC: resin.coreLimitC, actions }
}

/** Every moment of one pour until it has passed its peak. */
export function followPour(
  resin: FittedResin,
  conditions: PourConditions,
  depthMm: number,
): readonly StackMoment[] {
  const { setting, startHour, resinC, widthMm } = conditions
  const stack = new LayerStack(resin.chemistry, setting, startHour)
  stack.pour({ depthMm, widthMm, resinC })
  const moments: StackMoment[] = [stack.moment()]
  let hottestC = -Infinity
  stack.runUntil(startHour + LONGEST_HOURS, (moment) => {
    moments.push(moment)
    hottestC = Math.max(hottestC, moment.coreC)
    return moment.topLayerDegree > 0.65 && moment.coreC < hottestC - 2
  })
  return moments
}
