import { type CivilDay, dayAfter } from '../resin'
import { dateWords } from './hourText'

const LONG_MONTHS: ReadonlySet<number> = new Set([1, 3, 5, 7, 8, 10, 12])

function lastOf(year: number, month: number): CivilDay {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  if (month === 2) return { year, month, day: isLeap ? 29 : 28 }
  return { year, month, day: LONG_MONTHS.has(month) ? 31 : 30 }
}

function dayBefore({ year, month, day }: CivilDay): CivilDay {
  if (day > 1) return { year, month, day: day - 1 }
  return month > 1 ? lastOf(year, month - 1) : lastOf(year - 1, 12)
}

/** A day so many days from another, before it where below zero. */
export function dayAt(from: CivilDay, days: number): CivilDay {
  if (days >= 0) return dayAfter(from, days)
  let found = from
  for (let back = days; back < 0; back += 1) found = dayBefore(found)
  return found
}

/**
 * A day of the work, in words.
 * @param days      from the day of the first pour
 * @param firstDay  null: not settled
 * @returns `Thu 26 Nov`, or `day 3` (the first pour is on day 1), or `2 days before`
 */
export function dayText(days: number, firstDay: CivilDay | null): string {
  if (firstDay !== null) return dateWords(dayAt(firstDay, days))
  if (days >= 0) return `day ${days + 1}`
  return days === -1 ? '1 day before' : `${-days} days before`
}
