import { describe, expect, it } from 'vitest'
import { civilDay, clockText, hourText, weekdayOf } from './hourText'

describe('hours of a pour in words', () => {
  it('POUR-8 counts days from the first pour until its day is settled', () => {
    expect(hourText(8, null)).toBe('day 1, 08:00')
    expect(hourText(24 + 7.5, null)).toBe('day 2, 07:30')
    expect(hourText(23.999, null)).toBe('day 2, 00:00')
  })

  it('POUR-8 names the day of the calendar, over the end of a month and a leap day', () => {
    expect(hourText(8, civilDay('2028-02-28'))).toBe('Mon 28 Feb, 08:00')
    expect(hourText(24 + 9, civilDay('2028-02-28'))).toBe('Tue 29 Feb, 09:00')
    expect(hourText(48 + 9, civilDay('2028-02-28'))).toBe('Wed 1 Mar, 09:00')
  })

  it('POUR-8 knows the weekday (almanac: 20 July 1969 a Sunday, 1 January 2000 a Saturday)', () => {
    expect(weekdayOf({ year: 1969, month: 7, day: 20 })).toBe(0)
    expect(weekdayOf({ year: 2000, month: 1, day: 1 })).toBe(6)
  })

  it('POUR-8 agrees with the calendar of the machine on every day of 1999 to 2032', () => {
    for (let ms = Date.UTC(1999, 0, 1); ms < Date.UTC(2033, 0, 1); ms += 86_400_000) {
      const date = new Date(ms)
      const day = civilDay(date.toISOString().slice(0, 10))
      expect(day && weekdayOf(day)).toBe(date.getUTCDay())
    }
  })

  it('POUR-8 refuses what is no day', () => {
    for (const text of [
      null,
      '',
      '2027-02-29',
      '2027-04-31',
      '2027-13-01',
      '2027-00-10',
      '2027-1-1',
      '1500-01-01',
    ])
      expect(civilDay(text)).toBeNull()
  })

  it('POUR-8 shows the clock of any hour', () => {
    expect(clockText(36.25)).toBe('12:15')
    expect(clockText(-1)).toBe('23:00')
  })
})
