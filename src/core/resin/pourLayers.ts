import { InvariantError } from '../units'
import type { DepthLimit } from './depthLimit'
import { layerDepths } from './layerDepths'
import { layerGaps, type LayerGaps } from './layerGaps'
import {
  scheduleLayers,
  traceLayers,
  type LayerTiming,
  type Schedule,
  type ScheduleCase,
} from './layerSchedule'
import type { PourPlanInput } from './pourPlanInput'
import type { FittedResin, SheetFit } from './sheetFit'
import type { LayerPeak, StackTrace } from './stackTrace'

/** One layer with what it fills and its heat. */
export interface FilledLayer {
  readonly fromMm: number
  readonly toMm: number
  readonly isByHand: boolean
  readonly gaps: LayerGaps
}

/** One layer poured in the model. */
export interface LayerInTime {
  readonly filled: FilledLayer
  readonly timing: LayerTiming
  /** The same layer with the usual activation energy and with both ends of its band. */
  readonly bandPeaks: readonly [usual: LayerPeak, low: LayerPeak, high: LayerPeak]
  /** Of the band the core that comes nearest to its limit or passes it furthest. */
  readonly hottest: HottestCore
}

export interface ScheduledPour {
  readonly layers: readonly LayerInTime[]
  readonly schedule: Schedule
  /** The same pours with both ends of the band. */
  readonly low: StackTrace
  readonly high: StackTrace
}

export interface HottestCore {
  readonly coreC: number
  readonly limitC: number
}

export const MOST_LAYERS = 30
/** A core this little above its limit is within the simulation's own error. */
const OVER_TOLERANCE_K = 0.5
/** Extra layers that are tried when the stack runs hot. */
const MOST_EXTRA = 6

/**
 * Cuts the cast into layers and pours them in the model; adds a layer while any core passes its limit.
 * @param leastCount  at most MOST_LAYERS; see leastLayers
 * Rules: RES-17, RES-18.
 */
export function pourLayers(
  input: PourPlanInput,
  wish: ScheduleCase,
  limit: DepthLimit,
  leastCount: number,
): ScheduledPour {
  const isFree = input.layers.every(({ depthMm, startHour }) => depthMm === null && startHour === null)
  let depths = depthsOf(input, limit, leastCount)
  let pour = scheduled(input, wish, depths)
  for (let extra = 0; isFree && extra < MOST_EXTRA && isTooHot(pour.layers); extra += 1) {
    depths = depthsOf(input, limit, depths.length + 1)
    pour = scheduled(input, wish, depths)
  }
  return pour
}

const depthsOf = (input: PourPlanInput, limit: DepthLimit, leastCount: number): readonly number[] =>
  layerDepths({ castDepthMm: input.castDepthMm, limitMm: limit.planMm, leastCount, hand: input.layers })

export const isTooHot = (layers: readonly Pick<LayerInTime, 'hottest'>[]): boolean =>
  layers.some(({ hottest }) => hottest.coreC > hottest.limitC + OVER_TOLERANCE_K)

function scheduled(input: PourPlanInput, wish: ScheduleCase, depths: readonly number[]): ScheduledPour {
  let toMm = 0
  const filled = depths.map((depthMm, index): FilledLayer => {
    const fromMm = toMm
    toMm += depthMm
    const gaps = layerGaps(input.gaps, fromMm, toMm, index + 1)
    return { fromMm, toMm, gaps, isByHand: (input.layers[index]?.depthMm ?? null) !== null }
  })
  const layers = filled.map(({ gaps }, index) => ({
    hotDepthMm: gaps.hotDepthMm,
    widestMm: gaps.widestMm,
    slowDepthMm: gaps.slowDepthMm,
    narrowestMm: gaps.narrowestMm,
    startHour: input.layers[index]?.startHour ?? null,
  }))
  const schedule = scheduleLayers(wish, layers)
  const starts = schedule.layers.map(({ startHour }) => startHour)
  const trace = (resin: FittedResin): StackTrace => traceLayers(resin, wish, layers, starts, schedule.endHour)
  const low = trace(wish.fit.low)
  const high = trace(wish.fit.high)
  return {
    schedule,
    low,
    high,
    layers: filled.map((layer, index) => {
      const timing = schedule.layers[index]
      const [lowPeak, highPeak] = [low.peaks[index], high.peaks[index]]
      if (timing === undefined || lowPeak === undefined || highPeak === undefined)
        throw new InvariantError('a layer was not poured in the model', { layer: index + 1 })
      const bandPeaks = [timing.peak, lowPeak, highPeak] as const
      return { filled: layer, timing, bandPeaks, hottest: hottestOf(bandPeaks, wish.fit) }
    }),
  }
}

function hottestOf(peaks: LayerInTime['bandPeaks'], fit: SheetFit): HottestCore {
  const [usual, low, high] = peaks
  const cores: readonly HottestCore[] = [
    { coreC: low.coreC, limitC: fit.low.coreLimitC },
    { coreC: high.coreC, limitC: fit.high.coreLimitC },
  ]
  return cores.reduce(
    (worst, next) => (next.coreC - next.limitC > worst.coreC - worst.limitC ? next : worst),
    { coreC: usual.coreC, limitC: fit.nominal.coreLimitC },
  )
}
