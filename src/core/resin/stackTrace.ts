import type { LayerStack, StackMoment, StackProfile } from './layerStack'
import { PeakTracker } from './pourPeak'

/** The hottest moments while one layer is the uppermost; hours from midnight before the first pour. */
export interface LayerPeak {
  readonly coreC: number
  readonly coreHour: number
  readonly surfaceC: number
  readonly surfaceHour: number
}

export interface TimedProfile extends StackProfile {
  readonly hour: number
}

const PROFILE_EVERY_HOURS = 1
/** A pour that runs away is over within an hour: it is written down more closely. */
const PROFILE_EVERY_K = 3

/** Writes down a stack as it runs. Mutable; owned by the function that made it. */
export class StackTrace {
  readonly hours: number[] = []
  readonly surfacesC: number[] = []
  readonly coresC: number[] = []
  readonly profiles: TimedProfile[] = []
  readonly #stack: LayerStack
  readonly #keepsProfiles: boolean
  #profileCoreC = 0
  readonly #peaks: { readonly core: PeakTracker; readonly surface: PeakTracker }[] = []

  constructor(stack: LayerStack, keepsProfiles: boolean) {
    this.#stack = stack
    this.#keepsProfiles = keepsProfiles
  }

  /** To be called right after a layer was poured. */
  beginLayer(): void {
    this.#peaks.push({ core: new PeakTracker(), surface: new PeakTracker() })
    const moment = this.#stack.moment()
    if (this.#keepsProfiles) this.#keepProfile(moment)
    this.add(moment)
  }

  add(moment: StackMoment): void {
    this.hours.push(moment.hour)
    this.surfacesC.push(moment.surfaceC)
    this.coresC.push(moment.coreC)
    const peaks = this.#peaks.at(-1)
    peaks?.core.add(moment.hour, moment.coreC)
    peaks?.surface.add(moment.hour, moment.surfaceC)
    const last = this.profiles.at(-1)
    if (last === undefined) return
    const isDue =
      moment.hour >= last.hour + PROFILE_EVERY_HOURS ||
      Math.abs(moment.coreC - this.#profileCoreC) >= PROFILE_EVERY_K
    if (isDue) this.#keepProfile(moment)
  }

  #keepProfile(moment: StackMoment): void {
    this.#profileCoreC = moment.coreC
    this.profiles.push({ hour: moment.hour, ...this.#stack.profile() })
  }

  get peaks(): readonly LayerPeak[] {
    return this.#peaks.map(({ core, surface }) => ({
      coreC: core.value,
      coreHour: core.hour,
      surfaceC: surface.value,
      surfaceHour: surface.hour,
    }))
  }
}

/**
 * Values of a line at other hours.
 * @param hours  rising
 * @returns one value for each wanted hour; the first and last value outside
 * Method: straight lines between the samples.
 */
export function valuesAtHours(
  hours: readonly number[],
  values: readonly number[],
  wanted: readonly number[],
): readonly number[] {
  let next = 0
  return wanted.map((hour) => {
    while (next < hours.length - 1 && (hours[next] ?? Infinity) < hour) next += 1
    const after = values[next] ?? NaN
    const before = values[next - 1] ?? after
    const end = hours[next] ?? hour
    const start = hours[next - 1] ?? end
    return end <= start || hour >= end
      ? after
      : before + ((after - before) * Math.max(0, hour - start)) / (end - start)
  })
}
