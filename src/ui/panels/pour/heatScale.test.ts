import { describe, expect, it } from 'vitest'
import type { HeatChart, TimedProfile } from '../../../core/resin'
import { degreeTicks, heatScale, hourTicks, profileAt, temperatureAt } from './heatScale'

const BOX = { left: 50, top: 10, width: 500, height: 200 }
const chart = (coreC: readonly number[], toHour = 100): HeatChart => ({
  hours: coreC.map((_, k) => 8 + (k * (toHour - 8)) / (coreC.length - 1)),
  coreC,
  surfaceC: coreC.map((celsius) => celsius - 3),
  coreLeastC: coreC.map((celsius) => celsius - 1),
  coreGreatestC: coreC.map((celsius) => celsius + 2),
  profiles: [],
})
const profile = (hour: number, temperaturesC: readonly number[]): TimedProfile => ({
  hour,
  heightsMm: temperaturesC.map((_, k) => 2.5 + 5 * k),
  temperaturesC,
  degrees: temperaturesC.map(() => 0),
})

describe('the scale of the heat chart', () => {
  it('puts the first pour at the left, the end at the right, and all degrees between', () => {
    const scale = heatScale(chart([21, 60, 25]), 71, BOX)
    expect(scale.x(8)).toBe(50)
    expect(scale.x(100)).toBe(550)
    for (const celsius of [18, 62, 71]) {
      expect(scale.y(celsius)).toBeGreaterThanOrEqual(10)
      expect(scale.y(celsius)).toBeLessThanOrEqual(210)
    }
    expect(scale.y(62)).toBeLessThan(scale.y(21))
  })

  it('has ticks in whole tens, and hours that can be read', () => {
    const scale = heatScale(chart([21, 120, 25], 200), 71, BOX)
    expect(degreeTicks(scale).every((celsius) => celsius % 10 === 0)).toBe(true)
    const hours = hourTicks(scale)
    expect(hours.length).toBeGreaterThan(3)
    expect(hours.length).toBeLessThan(10)
    expect(hours.every((hour) => hour >= 8 && hour <= 200)).toBe(true)
  })

  it('does not draw a pour that stays cool as a mountain', () => {
    const scale = heatScale(chart([21, 22, 21]), null, BOX)
    expect(scale.greatestC - scale.leastC).toBeGreaterThanOrEqual(30)
  })
})

describe('the field of temperatures', () => {
  it('lies on straight lines between the middles of the cells, and ends at the surface', () => {
    const warm = profile(10, [20, 30, 40])
    expect(temperatureAt(warm, 5)).toBeCloseTo(25, 9)
    expect(temperatureAt(warm, 1)).toBe(20)
    expect(temperatureAt(warm, 14)).toBe(40)
    expect(temperatureAt(warm, 15.1)).toBeNull()
  })

  it('takes the last profile of an hour', () => {
    const profiles = [8, 9, 10].map((hour) => profile(hour, [hour]))
    expect(profileAt(profiles, 9.7)?.hour).toBe(9)
    expect(profileAt(profiles, 10)?.hour).toBe(10)
    expect(profileAt(profiles, 3)?.hour).toBe(8)
    expect(profileAt([], 3)).toBeUndefined()
  })
})
