import { dayAfter, type CivilDay } from '../resin'

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const
const LEAST_YEAR = 1583
const GREATEST_YEAR = 9998

/**
 * A day as YYYY-MM-DD.
 * @returns null where it is no day of the Gregorian calendar
 */
export function civilDay(text: string | null): CivilDay | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text ?? '')
  if (found === null) return null
  const [year, month, day] = [Number(found[1]), Number(found[2]), Number(found[3])]
  if (!isMonth(year, month) || day < 1) return null
  const same = dayAfter({ year, month, day: 1 }, day - 1)
  return same.month === month ? same : null
}

const isMonth = (year: number, month: number): boolean =>
  year >= LEAST_YEAR && year <= GREATEST_YEAR && month >= 1 && month <= 12

/** 0 is Sunday. Method: Sakamoto's, from memory; held in the test against dates of the almanac. */
export function weekdayOf({ year, month, day }: CivilDay): number {
  const shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1] ?? 0
  const y = month < 3 ? year - 1 : year
  return (y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + shift + day) % 7
}

const padded = (value: number): string => String(value).padStart(2, '0')

/** `08:30`, of hours counted from any midnight. */
export function clockText(hour: number): string {
  const minutes = Math.round(hour * 60)
  const ofDay = ((minutes % 1440) + 1440) % 1440
  return `${padded(Math.floor(ofDay / 60))}:${padded(ofDay % 60)}`
}

/** `Thu 26 Nov`. */
export const dateWords = (day: CivilDay): string =>
  `${WEEKDAYS[weekdayOf(day)] ?? ''} ${day.day} ${MONTHS[day.month - 1] ?? ''}`

/**
 * When something is due, in words.
 * @param hour      from midnight before the first pour
 * @param firstDay  null: not settled
 * @returns `Thu 26 Nov, 08:30`, or `day 2, 08:30`
 */
export function hourText(hour: number, firstDay: CivilDay | null): string {
  const days = Math.floor(Math.round(hour * 60) / 1440)
  if (firstDay === null || days < 0) return `day ${days + 1}, ${clockText(hour)}`
  return `${dateWords(dayAfter(firstDay, days))}, ${clockText(hour)}`
}
