import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chooseStartHour, isAwake, nextWakingHour, roundUpHalfHour, type StartWish } from './wakingHours'

const SEED = 20_250_706
console.info(`wakingHours properties: seed ${SEED}`)

const day = { fromHour: 7, toHour: 22 }
const wish: StartWish = { earliestHour: 30, latestHour: 80, day, peakDelayHours: 13, workHours: 1 }

describe('wakingHours', () => {
  it('RES-18 awake from seven to ten at night, on any day', () => {
    expect([6.9, 7, 22, 22.1, 31, 46, 47].map((hour) => isAwake(hour, day))).toEqual([
      false,
      true,
      true,
      false,
      true,
      true,
      false,
    ])
  })

  it('RES-18 a day without length leaves every hour open', () => {
    expect(isAwake(3, { fromHour: 7, toHour: 7 })).toBe(true)
  })

  it('RES-18 the next waking hour is this one, this morning’s or tomorrow’s', () => {
    expect(nextWakingHour(9, day)).toBe(9)
    expect(nextWakingHour(27, day)).toBe(31)
    expect(nextWakingHour(23, day)).toBe(31)
  })

  it('RES-18 the hour is put where the peak is seen too: 7:00 and 13 h would do at 20:00', () => {
    // Earliest is 6:00 of the second day; at 7:00 the peak comes at 20:00.
    expect(chooseStartHour(wish)).toBe(31)
    // With 17 h to the peak a pour from 14:00 on peaks at 7:00 of the next day.
    expect(chooseStartHour({ ...wish, peakDelayHours: 17 })).toBe(38)
  })

  it('RES-18 where no hour of the window shows the peak, the first waking one is taken', () => {
    expect(chooseStartHour({ ...wish, latestHour: 33, peakDelayHours: 17 })).toBe(31)
  })

  it('RES-18 a window that lies in the night is missed for the morning', () => {
    expect(chooseStartHour({ ...wish, earliestHour: 47, latestHour: 52 })).toBe(55)
  })

  it('RES-18 never before the earliest, always on a half hour, always awake', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (earliestHour, window, peakDelayHours) => {
          const hour = chooseStartHour({
            ...wish,
            earliestHour,
            latestHour: earliestHour + window,
            peakDelayHours,
          })
          expect(hour).toBeGreaterThanOrEqual(earliestHour - 1e-6)
          expect(hour * 2).toBe(Math.round(hour * 2))
          expect(isAwake(hour, day)).toBe(true)
        },
      ),
      { seed: SEED, numRuns: 300 },
    )
  })

  it('RES-18 half hours are rounded up, and an exact one stays', () => {
    expect([7.01, 7.5, 7.51].map(roundUpHalfHour)).toEqual([7.5, 7.5, 8])
  })
})
