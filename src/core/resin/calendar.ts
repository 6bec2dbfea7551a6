import { InvariantError } from '../units'

/** A day of the Gregorian calendar, without a time zone. */
export interface CivilDay {
  readonly year: number
  /** 1 to 12. */
  readonly month: number
  readonly day: number
}

/** One entry of the calendar; its texts come from the message catalogue. */
export interface CalendarEntry {
  /** Stable for the same step of the same job, so that a second file moves the entry instead of doubling it. */
  readonly uid: string
  readonly summary: string
  readonly description: string
  /** Hours from midnight of the first day. */
  readonly startHour: number
  readonly durationMinutes: number
  /** Minutes before the start at which to be reminded; null: no reminder. */
  readonly remindMinutesBefore: number | null
}

export interface CalendarFile {
  readonly firstDay: CivilDay
  /** When the file was made, in UTC: YYYYMMDDTHHMMSSZ. */
  readonly stampUtc: string
  readonly entries: readonly CalendarEntry[]
}

const OCTETS_PER_LINE = 75
const MINUTES_PER_DAY = 1440

/**
 * The pours as a calendar file.
 * @returns iCalendar text with CRLF; times are local to wherever it is opened
 * @throws InvariantError when the stamp or the first day is not well formed
 * Method: RFC 5545 (from memory and from restatements): VEVENT with UID, DTSTAMP, DTSTART and DURATION, floating
 * local times (form 1 of 3.3.5), text escaped (3.3.11), lines folded at 75 octets (3.1).
 * Rules: RES-23.
 */
export function calendarText(file: CalendarFile): string {
  if (!/^\d{8}T\d{6}Z$/.test(file.stampUtc))
    throw new InvariantError('stamp must be YYYYMMDDTHHMMSSZ', { stampUtc: file.stampUtc })
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Waneline//Pour plan//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...file.entries.flatMap((entry) => entryLines(entry, file)),
    'END:VCALENDAR',
  ]
  return lines.map((line) => `${foldLine(line)}\r\n`).join('')
}

function entryLines(entry: CalendarEntry, file: CalendarFile): readonly string[] {
  const summary = escapeText(entry.summary)
  return [
    'BEGIN:VEVENT',
    `UID:${escapeText(entry.uid)}`,
    `DTSTAMP:${file.stampUtc}`,
    `DTSTART:${localTime(file.firstDay, entry.startHour)}`,
    `DURATION:PT${Math.max(1, Math.round(entry.durationMinutes))}M`,
    `SUMMARY:${summary}`,
    ...(entry.description === '' ? [] : [`DESCRIPTION:${escapeText(entry.description)}`]),
    ...(entry.remindMinutesBefore === null ? [] : reminderLines(entry.remindMinutesBefore, summary)),
    'END:VEVENT',
  ]
}

const reminderLines = (minutes: number, summary: string): readonly string[] => [
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `TRIGGER:-PT${Math.max(0, Math.round(minutes))}M`,
  `DESCRIPTION:${summary}`,
  'END:VALARM',
]

/** Backslash, semicolon, comma and new line as RFC 5545 3.3.11 has them; other control characters are left out. */
export function escapeText(text: string): string {
  return Array.from(text.replace(/\r\n?/g, '\n'))
    .map((letter) => {
      if (letter === '\n') return '\\n'
      if (letter === '\\' || letter === ';' || letter === ',') return `\\${letter}`
      const code = letter.codePointAt(0) ?? 0
      return (code < 32 && letter !== '\t') || code === 127 ? '' : letter
    })
    .join('')
}

/** Octets of one letter in UTF-8; a lone surrogate is written as the replacement letter, three octets. */
function octetsOf(letter: string): number {
  const code = letter.codePointAt(0) ?? 0
  if (code < 0x80) return 1
  if (code < 0x800) return 2
  return code < 0x10000 ? 3 : 4
}

/**
 * Folds one line at 75 octets, never within a letter.
 * @returns the line with CRLF and a space at each fold
 * Rules: RES-23.
 */
export function foldLine(line: string): string {
  let folded = ''
  let octets = 0
  for (const letter of line) {
    const size = octetsOf(letter)
    if (octets + size > OCTETS_PER_LINE) {
      folded += '\r\n '
      octets = 1
    }
    folded += letter
    octets += size
  }
  return folded
}

const padded = (value: number, digits: number): string => String(value).padStart(digits, '0')

/** @returns YYYYMMDDTHHMMSS, so many hours after midnight of the day, to the minute */
export function localTime(firstDay: CivilDay, hours: number): string {
  const minutes = Math.round(hours * 60)
  const days = Math.floor(minutes / MINUTES_PER_DAY)
  const rest = minutes - days * MINUTES_PER_DAY
  const { year, month, day } = dayAfter(firstDay, days)
  return `${padded(year, 4)}${padded(month, 2)}${padded(day, 2)}T${padded(Math.floor(rest / 60), 2)}${padded(rest % 60, 2)}00`
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0

function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

const isDay = ({ year, month, day }: CivilDay): boolean =>
  [year, month, day].every(Number.isInteger) &&
  year >= 1583 &&
  year <= 9999 &&
  month >= 1 &&
  month <= 12 &&
  day >= 1 &&
  day <= daysInMonth(year, month)

/**
 * The day so many days on, by the Gregorian rules.
 * @param days  0 or more
 * @throws InvariantError when the day does not exist, or the count is not a whole number ≥ 0
 */
export function dayAfter(from: CivilDay, days: number): CivilDay {
  if (!isDay(from) || !Number.isInteger(days) || days < 0)
    throw new InvariantError('no such day', { year: from.year, month: from.month, day: from.day, days })
  let { year, month, day } = from
  day += days
  while (day > daysInMonth(year, month)) {
    day -= daysInMonth(year, month)
    month += 1
    if (month > 12) {
      month = 1
      year += 1
    }
  }
  return { year, month, day }
}
