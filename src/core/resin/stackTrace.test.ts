import { describe, expect, it } from 'vitest'
import { LayerStack } from './layerStack'
import { GENERIC_CHEMISTRY } from './resinChemistry'
import { StackTrace, valuesAtHours } from './stackTrace'

describe('valuesAtHours', () => {
  it('RES-21 values between the samples lie on straight lines, and outside at the ends', () => {
    expect(valuesAtHours([0, 2, 4], [10, 20, 0], [-1, 0, 1, 2, 3, 4, 9])).toEqual([10, 10, 15, 20, 10, 0, 0])
  })
})

describe('StackTrace', () => {
  const chemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 }
  const setting = {
    room: { kind: 'steady', roomC: 21 },
    air: 'still',
    beneath: 'board-on-bench',
    woodWPerMK: 0.15,
  } as const

  it('RES-8 peaks are kept layer by layer, profiles an hour apart', () => {
    const stack = new LayerStack(chemistry, setting, 8)
    const trace = new StackTrace(stack, true)
    for (const until of [48, 100]) {
      stack.pour({ depthMm: 40, widthMm: null, resinC: 21 }, 8)
      trace.beginLayer()
      stack.runUntil(until, (moment) => {
        trace.add(moment)
        return false
      })
    }
    const [first, second] = trace.peaks
    expect(first?.coreHour).toBeLessThan(48)
    expect(second?.coreHour).toBeGreaterThan(48)
    expect(first?.coreC).toBeCloseTo(
      Math.max(...trace.coresC.filter((_, index) => (trace.hours[index] ?? 0) < 48)),
      9,
    )
    const gaps = trace.profiles.slice(1).map(({ hour }, index) => hour - (trace.profiles[index]?.hour ?? 0))
    // A pour writes its own profile, so the one before it may be near.
    expect(gaps.filter((gap) => gap < 1)).toHaveLength(1)
  })

  it('RES-8 a pour that runs away is written down as it heats, its hottest moment within 3 K', () => {
    const stack = new LayerStack(chemistry, setting, 8)
    const trace = new StackTrace(stack, true)
    stack.pour({ depthMm: 90, widthMm: null, resinC: 30 }, 8)
    trace.beginLayer()
    stack.runUntil(60, (moment) => {
      trace.add(moment)
      return false
    })
    const cores = trace.profiles.map(({ temperaturesC }) => Math.max(...temperaturesC))
    const hottestC = trace.peaks[0]?.coreC ?? NaN
    expect(hottestC).toBeGreaterThan(100)
    expect(Math.max(...cores)).toBeGreaterThan(hottestC - 3)
  })
})
