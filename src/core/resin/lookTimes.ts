import { roundUpHalfHour } from './wakingHours'
import type { StackTrace } from './stackTrace'

/** When to look at the surface with the thermometer gun, and what it should read then. */
export interface LookTime {
  readonly hour: number
  readonly why: 'early' | 'peak-begins' | 'peak-ends'
  readonly surfaceC: number
}

/** Fans help only early: the first look comes at this share of the way to the earliest peak. No source. */
const EARLY_SHARE = 0.55

/**
 * Looks at one layer: while cooling it still helps, at the earliest and at the latest hour of its peak over the band.
 * @param peakHours  hours of the core's peak over the band, from midnight before the first pour
 * Rules: RES-21.
 */
export function lookTimes(
  startHour: number,
  peakHours: readonly number[],
  trace: StackTrace,
): readonly LookTime[] {
  const earliest = Math.min(...peakHours)
  const latest = Math.max(...peakHours)
  const early = Math.floor((startHour + EARLY_SHARE * (earliest - startHour)) * 2) / 2
  const at = (hour: number): number => nearest(trace, hour)
  const looks: LookTime[] = [
    { hour: Math.max(startHour, early), why: 'early', surfaceC: at(early) },
    { hour: Math.floor(earliest * 2) / 2, why: 'peak-begins', surfaceC: at(earliest) },
    { hour: roundUpHalfHour(latest), why: 'peak-ends', surfaceC: at(latest) },
  ]
  return looks.filter((look, index) => index === 0 || look.hour > (looks[index - 1]?.hour ?? -Infinity))
}

function nearest(trace: StackTrace, hour: number): number {
  const found = trace.hours.findIndex((sample) => sample >= hour)
  return trace.surfacesC[found === -1 ? trace.surfacesC.length - 1 : found] ?? NaN
}
