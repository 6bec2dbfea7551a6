import { peakAt, type PourConditions } from './deepestLayer'
import type { PourPlanInput } from './pourPlanInput'
import { roomAtC } from './roomTemperature'
import type { SheetFit } from './sheetFit'
import { isAwake } from './wakingHours'

export interface StartHourPeak {
  readonly startHour: number
  readonly coreC: number
}

/** A swing smaller than this does not make a better hour. */
const LEAST_SWING_K = 1
const EVERY_HOURS = 3

/**
 * The hottest core of a layer by the hour at which it is poured, where the room's temperature swings.
 * @returns one line for each waking hour looked at; none for a steady room
 * Rules: RES-6, RES-18.
 */
export function startHours(
  fit: SheetFit,
  input: PourPlanInput,
  depthMm: number,
  conditions: PourConditions,
): readonly StartHourPeak[] {
  const { room } = input.setting
  if (room.kind === 'steady' || Math.abs(room.swingC) < LEAST_SWING_K) return []
  const hours = Array.from({ length: 24 / EVERY_HOURS }, (_, index) => index * EVERY_HOURS)
  return hours
    .filter((hour) => isAwake(hour, input.day))
    .map((startHour) => ({
      startHour,
      coreC: peakAt(
        fit.nominal,
        { ...conditions, startHour, resinC: input.resinC ?? roomAtC(room, startHour) },
        depthMm,
      ).coreC,
    }))
}
