import { ok, problem, type Result } from '../units'

const CLOCK = /^(?:(?:day\s*)?(\d{1,3})\s*[,\s]\s*)?(\d{1,2})(?:[:.h](\d{2}))?$/

/**
 * Reads when a layer is to be poured: `day 2, 08:30`, `2 8:30`, or the clock alone.
 * @param text     what was typed
 * @param nowHour  hours from midnight before the first pour that it replaces: the clock alone keeps its day
 * @returns hours from midnight before the first pour; problem hour-not-understood {text}
 * Rules: POUR-8.
 */
export function parseHour(text: string, nowHour: number): Result<number> {
  const found = CLOCK.exec(text.trim().toLowerCase())
  const [, day, hour, minute] = found ?? []
  const ofDay = Number(hour ?? NaN) + Number(minute ?? 0) / 60
  const days = day === undefined ? Math.floor(nowHour / 24) : Number(day) - 1
  if (!(ofDay < 24) || Number(minute ?? 0) > 59 || days < 0)
    return problem('hour-not-understood', { text: text.trim().slice(0, 60) })
  return ok(days * 24 + ofDay)
}
