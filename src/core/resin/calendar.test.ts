import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { calendarText, dayAfter, escapeText, foldLine, localTime, type CalendarEntry } from './calendar'

const FIRST_DAY = { year: 2026, month: 2, day: 27 }
const entry: CalendarEntry = {
  uid: 'job-1-layer-1-pour@waneline',
  summary: 'Pour layer 1; 10.8 L, “slow” \\ resin',
  description: 'First line\nSecond line, with a comma; and a semicolon',
  startHour: 8,
  durationMinutes: 45,
  remindMinutesBefore: 30,
}
const text = (entries: readonly CalendarEntry[]): string =>
  calendarText({ firstDay: FIRST_DAY, stampUtc: '20260220T101500Z', entries })

/** What an independent parser reads, event by event. */
const readBack = (written: string) =>
  new ICAL.Component(ICAL.parse(written)).getAllSubcomponents('vevent').map((event) => new ICAL.Event(event))

describe('calendarText', () => {
  it('RES-23 an independent parser reads back what was written, texts and all', () => {
    const [read] = readBack(text([entry]))
    expect(read?.uid).toBe(entry.uid)
    expect(read?.summary).toBe(entry.summary)
    expect(read?.description).toBe(entry.description)
    expect(read?.startDate.toString()).toBe('2026-02-27T08:00:00')
    expect(read?.startDate.zone.tzid).toBe('floating')
    expect(read?.duration.toSeconds()).toBe(2700)
    const alarm = read?.component.getFirstSubcomponent('valarm')
    expect(alarm?.getFirstPropertyValue('trigger')?.toString()).toBe('-PT30M')
  })

  it('RES-23 hours run on over midnight and the end of a month', () => {
    const [read] = readBack(text([{ ...entry, startHour: 55.5 }]))
    expect(read?.startDate.toString()).toBe('2026-03-01T07:30:00')
  })

  it('RES-23 every line ends in CRLF and none is longer than 75 octets', () => {
    const long = { ...entry, description: '木の天板 – größer – 24 °C '.repeat(30), summary: 'x'.repeat(400) }
    const written = text([entry, long])
    expect(written.endsWith('END:VCALENDAR\r\n')).toBe(true)
    expect(written.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    const octets = written.split('\r\n').map((line) => new TextEncoder().encode(line).length)
    expect(Math.max(...octets)).toBeLessThanOrEqual(75)
    expect(Math.max(...octets)).toBeGreaterThan(72)
    expect(readBack(written)[1]?.description).toBe(long.description)
    expect(readBack(written)[1]?.summary).toBe(long.summary)
  })

  it('RES-23 no fold falls within a letter of several octets', () => {
    for (let lead = 60; lead < 80; lead += 1) {
      const line = `${'a'.repeat(lead)}😀é${'b'.repeat(20)}`
      const pieces = foldLine(line).split('\r\n ')
      expect(pieces.join('')).toBe(line)
      expect(pieces.some((piece) => /\p{Surrogate}/u.test(piece))).toBe(false)
    }
  })

  it('RES-23 it has what RFC 5545 asks for: version, product, a stamp and a UID for each event', () => {
    const calendar = new ICAL.Component(ICAL.parse(text([entry, { ...entry, uid: 'other@waneline' }])))
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0')
    expect(calendar.getFirstPropertyValue('prodid')).toContain('Waneline')
    for (const event of calendar.getAllSubcomponents('vevent')) {
      for (const name of ['uid', 'dtstamp', 'dtstart', 'duration', 'summary'])
        expect(event.getAllProperties(name)).toHaveLength(1)
      expect(event.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-02-20T10:15:00Z')
    }
  })

  it('RES-23 the same plan gives the same text; without reminder and description none is written', () => {
    expect(text([entry])).toBe(text([entry]))
    const bare = text([{ ...entry, remindMinutesBefore: null, description: '' }])
    expect(bare).not.toContain('VALARM')
    expect(bare).not.toContain('DESCRIPTION')
  })

  it('RES-23 a text cannot add lines of its own: line breaks and control characters are made harmless', () => {
    expect(escapeText('a\r\nBEGIN:VEVENT\rb\nc;d,e\\f\u0007g\th')).toBe(
      'a\\nBEGIN:VEVENT\\nb\\nc\\;d\\,e\\\\fg\th',
    )
    expect(readBack(text([{ ...entry, summary: 'x\r\nEND:VEVENT' }]))).toHaveLength(1)
  })

  it('RES-23 a stamp or a day that is not one is our own bug', () => {
    expect(() => calendarText({ firstDay: FIRST_DAY, stampUtc: '2026-02-20', entries: [] })).toThrow('stamp')
    expect(() => dayAfter({ year: 2026, month: 2, day: 29 }, 1)).toThrow('no such day')
    expect(() => dayAfter(FIRST_DAY, -1)).toThrow('no such day')
  })
})

describe('dayAfter', () => {
  it('RES-23 it agrees with another calendar over ten thousand days, leap years and centuries included', () => {
    for (const start of [Date.UTC(1999, 11, 31), Date.UTC(2026, 1, 27), Date.UTC(2096, 1, 20)]) {
      const first = new Date(start)
      const from = { year: first.getUTCFullYear(), month: first.getUTCMonth() + 1, day: first.getUTCDate() }
      for (let days = 0; days < 3400; days += 1) {
        const other = new Date(start + days * 86_400_000)
        const found = dayAfter(from, days)
        const same =
          found.year === other.getUTCFullYear() &&
          found.month === other.getUTCMonth() + 1 &&
          found.day === other.getUTCDate()
        if (!same) expect(found).toEqual(other.toISOString())
      }
    }
    expect(dayAfter({ year: 2024, month: 2, day: 28 }, 1)).toEqual({ year: 2024, month: 2, day: 29 })
    expect(dayAfter({ year: 2100, month: 2, day: 28 }, 1)).toEqual({ year: 2100, month: 3, day: 1 })
  })

  it('RES-23 a time is written to the minute', () => {
    expect(localTime(FIRST_DAY, 23.999)).toBe('20260228T000000')
    expect(localTime(FIRST_DAY, 7.25)).toBe('20260227T071500')
  })
})
