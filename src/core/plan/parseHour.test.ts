import { describe, expect, it } from 'vitest'
import { hourText } from './hourText'
import { parseHour } from './parseHour'

describe('parseHour', () => {
  it.each([
    ['day 2, 08:30', 32.5],
    ['2 8:30', 32.5],
    ['DAY 3 17', 65],
    ['9', 33],
    ['07.15', 31.25],
    ['1, 23:59', 23 + 59 / 60],
  ])('POUR-8 reads %s', (text, hours) => {
    expect(parseHour(text, 30)).toEqual({ ok: true, value: hours })
  })

  it.each(['', 'soon', '25:00', 'day 0, 8', '8:75', 'day 2', '-3'])('POUR-8 refuses %j', (text) => {
    expect(parseHour(text, 30)).toMatchObject({ ok: false, problem: { code: 'hour-not-understood' } })
  })

  it('POUR-8 reads back what is shown', () => {
    for (const hour of [0, 8, 23.5, 24, 79, 500.25]) {
      expect(parseHour(hourText(hour, null), 0)).toEqual({ ok: true, value: hour })
    }
  })
})
