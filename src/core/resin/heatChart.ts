import type { Schedule } from './layerSchedule'
import { valuesAtHours, type StackTrace, type TimedProfile } from './stackTrace'

/** Lines and field for the chart of the hottest gap; hours from midnight before the first pour. */
export interface HeatChart {
  readonly hours: readonly number[]
  readonly surfaceC: readonly number[]
  readonly coreC: readonly number[]
  /** Envelope of the core over the band of activation energies. */
  readonly coreLeastC: readonly number[]
  readonly coreGreatestC: readonly number[]
  /** Temperature and cure through the depth, about an hour apart; closer where the core changes fast. */
  readonly profiles: readonly TimedProfile[]
}

const MOST_POINTS = 240

/**
 * The record of a schedule, thinned for drawing.
 * @param others  the same pours with both ends of the band
 * Rules: RES-12.
 */
export function heatChart(schedule: Schedule, others: readonly StackTrace[]): HeatChart {
  const { trace, endHour } = schedule
  const firstHour = trace.hours[0] ?? endHour
  const hours = Array.from(
    { length: MOST_POINTS + 1 },
    (_, index) => firstHour + ((endHour - firstHour) * index) / MOST_POINTS,
  )
  const line = (from: StackTrace, values: readonly number[]): readonly number[] =>
    valuesAtHours(from.hours, values, hours)
  const coreC = line(trace, trace.coresC)
  const otherCores = others.map((other) => line(other, other.coresC))
  const envelope = (pick: (...values: readonly number[]) => number): readonly number[] =>
    coreC.map((core, index) => pick(core, ...otherCores.map((values) => values[index] ?? core)))
  return {
    hours,
    surfaceC: line(trace, trace.surfacesC),
    coreC,
    coreLeastC: envelope(Math.min),
    coreGreatestC: envelope(Math.max),
    profiles: trace.profiles,
  }
}
