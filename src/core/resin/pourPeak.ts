import { CELLS_PER_LAYER, LayerStack, type PouredLayer, type StackMoment } from './layerStack'
import { USUAL_STEPS, type StepLimits } from './heatRun'
import type { PourSetting } from './pourSetting'
import type { ResinChemistry } from './resinChemistry'
import { meanRoomC } from './roomTemperature'

/** The hottest moments of one pour; hours after the pour. */
export interface PourPeak {
  readonly coreC: number
  readonly coreHours: number
  readonly surfaceC: number
  readonly surfaceHours: number
}

export interface PourCase {
  readonly layer: PouredLayer
  readonly setting: PourSetting
  /** Hour of the day of the pour; matters only where the room's temperature swings. */
  readonly startHour: number
  readonly cells?: number
  readonly steps?: StepLimits
}

/** Longest that a pour is followed in search of its peak, hours. */
const LONGEST_HOURS = 336
/** Beyond this degree a pour that has begun to cool stays behind its peak; see `hasPeaked`. */
const PAST_DEGREE = 0.3
const PAST_DEGREE_SWINGING = 0.65

/** Highest value and its time, by the parabola through the highest sample and its neighbours. */
export class PeakTracker {
  #before: readonly [number, number] | null = null
  #best: readonly [number, number] | null = null
  #last: readonly [number, number] | null = null
  #after: readonly [number, number] | null = null

  add(hour: number, value: number): void {
    const sample = [hour, value] as const
    if (this.#best === null || value > this.#best[1]) {
      this.#before = this.#last
      this.#best = sample
      this.#after = null
    } else this.#after ??= sample
    this.#last = sample
  }

  get value(): number {
    return this.#best?.[1] ?? -Infinity
  }

  /** Hour of the peak; the first sample's where nothing rose above it. */
  get hour(): number {
    const best = this.#best
    if (best === null) return 0
    if (this.#before === null || this.#after === null) return best[0]
    const left = (best[1] - this.#before[1]) / (best[0] - this.#before[0])
    const right = (best[1] - this.#after[1]) / (this.#after[0] - best[0])
    // The slopes at the middles of both sides; the top lies where the line between them crosses zero.
    return left + right === 0
      ? best[0]
      : (this.#before[0] + best[0]) / 2 + (left / (left + right)) * ((this.#after[0] - this.#before[0]) / 2)
  }
}

/**
 * Simulates one pour until its peak is behind it.
 * @returns temperatures in °C and hours after the pour
 * Rules: RES-4 to RES-7.
 */
export function pourPeak(chemistry: ResinChemistry, pour: PourCase): PourPeak {
  const { layer, setting, startHour, cells = CELLS_PER_LAYER, steps = USUAL_STEPS } = pour
  const stack = new LayerStack(chemistry, setting, startHour, steps)
  stack.pour(layer, cells)
  const core = new PeakTracker()
  const surface = new PeakTracker()
  const roomC = meanRoomC(setting.room)
  const pastDegree = setting.room.kind === 'steady' ? PAST_DEGREE : PAST_DEGREE_SWINGING
  const hasPeaked = (moment: StackMoment): boolean =>
    moment.topLayerDegree > pastDegree &&
    moment.coreC < core.value - 0.02 * Math.abs(core.value - roomC) - 0.02 &&
    moment.surfaceC < surface.value
  const watch = (moment: StackMoment): boolean => {
    core.add(moment.hour, moment.coreC)
    surface.add(moment.hour, moment.surfaceC)
    return hasPeaked(moment)
  }
  watch(stack.moment())
  stack.runUntil(startHour + LONGEST_HOURS, watch)
  return {
    coreC: core.value,
    coreHours: core.hour - startHour,
    surfaceC: surface.value,
    surfaceHours: surface.hour - startHour,
  }
}
