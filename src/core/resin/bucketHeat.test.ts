import { describe, expect, it } from 'vitest'
import { bucketDegree, bucketHeat, bucketHoursToDegree, bucketLossWPerKgK } from './bucketHeat'
import { isothermalHours } from './cureLaw'
import { GENERIC_CHEMISTRY } from './resinChemistry'

const chemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 }

describe('bucketHeat', () => {
  it('RES-15 a heavier bucket is never cooler and never slower to warm', () => {
    const heats = [0.5, 1, 2, 5, 10, 20, Infinity].map((massKg) => bucketHeat(chemistry, massKg, 21, 21))
    const peaks = heats.map(({ peakC }) => peakC)
    expect(peaks).toEqual([...peaks].sort((a, b) => a - b))
    const plus5 = heats.map(({ plus5Hours }) => plus5Hours ?? Infinity)
    expect(plus5).toEqual([...plus5].sort((a, b) => b - a))
  })

  it('RES-15 a warmer room and warmer resin warm it sooner', () => {
    const hours = (roomC: number, resinC: number): number =>
      bucketHeat(chemistry, 5, roomC, resinC).plus10Hours ?? Infinity
    expect(hours(26, 26)).toBeLessThan(hours(21, 21))
    expect(hours(21, 26)).toBeLessThan(hours(21, 21))
  })

  it('RES-15 a cup holds itself: it never reaches 60 °C', () => {
    expect(bucketHeat(chemistry, 0.2, 21, 21)).toMatchObject({ reaches60Hours: null, plus10Hours: null })
  })

  it('RES-15 without losses the end is the full rise', () => {
    const riseK = chemistry.reactionHeatJPerKg / chemistry.heatCapacityJPerKgK
    const { peakC } = bucketHeat(chemistry, Infinity, 21, 21)
    expect(peakC).toBeGreaterThan(21 + 0.98 * riseK)
    expect(peakC).toBeLessThanOrEqual(21 + riseK)
    expect(bucketLossWPerKgK(Infinity, chemistry)).toBe(0)
  })

  it('RES-15 a thimble cures at the temperature of the room, as the closed form has it', () => {
    const tiny = { massKg: 1e-4, roomC: 21, resinC: 21 }
    const hours = isothermalHours(chemistry, 0.3, 21)
    expect(bucketDegree(chemistry, tiny, hours)).toBeCloseTo(0.3, 2)
    expect((bucketHoursToDegree(chemistry, tiny, 0.3) ?? NaN) / hours).toBeCloseTo(1, 1)
  })

  it('RES-15 a degree that is not reached within four days has no hour', () => {
    expect(bucketHoursToDegree(chemistry, { massKg: 0.1, roomC: 0, resinC: 0 }, 0.9)).toBeNull()
  })
})
