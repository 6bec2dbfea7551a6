import { describe, expect, it } from 'vitest'
import { LayerStack, type StackMoment } from './layerStack'
import type { PourSetting } from './pourSetting'
import { GENERIC_CHEMISTRY } from './resinChemistry'

const chemistry = { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 }
const setting: PourSetting = {
  room: { kind: 'steady', roomC: 21 },
  air: 'still',
  beneath: 'board-on-bench',
  woodWPerMK: 0.15,
}
const layer = { depthMm: 50, widthMm: null, resinC: 21 }

function hottest(stack: LayerStack, untilHour: number): number {
  let core = -Infinity
  stack.runUntil(untilHour, (moment) => {
    core = Math.max(core, moment.coreC)
    return false
  })
  return core
}

describe('LayerStack', () => {
  it('RES-8 a second layer on a hot first runs away, and on a cool one it does not', () => {
    const second = (waitHours: number): number => {
      const stack = new LayerStack(chemistry, setting, 0)
      stack.pour(layer)
      stack.runUntil(waitHours)
      stack.pour(layer)
      return hottest(stack, waitHours + 60)
    }
    expect(second(15)).toBeGreaterThan(150)
    expect(second(48)).toBeLessThan(60)
  })

  it('RES-8 the layer beneath stays where it was, and goes on curing', () => {
    const stack = new LayerStack(chemistry, setting, 0)
    stack.pour(layer, 10)
    stack.runUntil(20)
    const before = stack.profile()
    stack.pour({ ...layer, depthMm: 20 }, 10)
    const after = stack.profile()
    expect(after.heightsMm.slice(0, 10)).toEqual(before.heightsMm)
    expect(after.degrees.slice(0, 10)).toEqual(before.degrees)
    expect(after.heightsMm[19]).toBeCloseTo(69, 9)
    stack.runUntil(40)
    const later = stack.profile().degrees
    expect(before.degrees.every((degree, index) => (later[index] ?? NaN) > degree)).toBe(true)
  })

  it('RES-5 finer cells and steps move the peak of 50 mm by less than 0.25 K, and ever less', () => {
    const peak = (cells: number, greatestDegreeStep: number): number => {
      const stack = new LayerStack(chemistry, setting, 0, {
        greatestDegreeStep,
        greatestStepS: 60_000 * greatestDegreeStep,
      })
      stack.pour(layer, cells)
      return hottest(stack, 40)
    }
    const finest = peak(192, 0.0025)
    const errors = [12, 24, 48].map((cells) => Math.abs(peak(cells, 0.0025) - finest))
    expect(errors[1]).toBeLessThan(0.25)
    expect((errors[0] ?? NaN) / (errors[1] ?? NaN)).toBeGreaterThan(3)
    expect((errors[1] ?? NaN) / (errors[2] ?? NaN)).toBeGreaterThan(3)
    expect(Math.abs(peak(24, 0.02) - finest)).toBeLessThan(0.5)
  })

  it('RES-5 few cells are enough for the thin layers of a tall stack', () => {
    const core = (cells: number): number => {
      const stack = new LayerStack(chemistry, setting, 0)
      let most = 0
      for (let index = 0; index < 4; index += 1) {
        stack.pour({ ...layer, depthMm: 12 }, cells)
        most = Math.max(most, hottest(stack, stack.hour + 24))
      }
      return most
    }
    expect(Math.abs(core(12) - core(24))).toBeLessThan(0.2)
    expect(Math.abs(core(6) - core(24))).toBeLessThan(0.5)
  })

  it('RES-5 the moment tells the hottest and the least cured place of the resin, not of the bench', () => {
    const stack = new LayerStack(chemistry, setting, 0)
    stack.pour({ ...layer, resinC: 30 })
    const first: StackMoment = stack.moment()
    expect(first).toMatchObject({ hour: 0, leastDegree: 0, topLayerDegree: 0 })
    expect(first.coreC).toBeCloseTo(30, 9)
    stack.runUntil(6)
    const { temperaturesC, degrees } = stack.profile()
    const now = stack.moment()
    expect(now.coreC).toBeCloseTo(Math.max(...temperaturesC), 9)
    expect(now.leastDegree).toBeCloseTo(Math.min(...degrees), 12)
  })

  it('RES-5 a layer without depth is our own bug', () => {
    expect(() => new LayerStack(chemistry, setting, 0).pour({ ...layer, depthMm: 0 })).toThrow(
      'deeper than zero',
    )
  })
})
