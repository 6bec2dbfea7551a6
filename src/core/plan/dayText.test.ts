import { describe, expect, it } from 'vitest'
import { dayAt, dayText } from './dayText'

describe('a day of the work', () => {
  it('is found before and after the first pour, over the ends of months and years (the platform’s calendar)', () => {
    const from = { year: 2028, month: 3, day: 2 }
    for (let days = -800; days <= 400; days += 1) {
      const date = new Date(Date.UTC(2028, 2, 2 + days))
      const found = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() }
      expect(dayAt(from, days)).toEqual(found)
    }
  })

  it('is named with its weekday, or counted while the first pour has no day', () => {
    // 1 March 2028 is a Wednesday (the platform’s calendar).
    expect(dayText(-1, { year: 2028, month: 3, day: 2 })).toBe('Wed 1 Mar')
    expect(dayText(0, null)).toBe('day 1')
    expect(dayText(-3, null)).toBe('3 days before')
  })
})
