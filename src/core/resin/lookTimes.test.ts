import { describe, expect, it } from 'vitest'
import { LayerStack } from './layerStack'
import { lookTimes } from './lookTimes'
import { GENERIC_CHEMISTRY } from './resinChemistry'
import { StackTrace } from './stackTrace'

const trace = (() => {
  const stack = new LayerStack(
    { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.7e-6, referenceC: 21 },
    {
      room: { kind: 'steady', roomC: 21 },
      air: 'still',
      beneath: 'board-on-bench',
      woodWPerMK: 0.15,
    },
    8,
  )
  const found = new StackTrace(stack, false)
  stack.pour({ depthMm: 50, widthMm: null, resinC: 21 })
  found.beginLayer()
  stack.runUntil(48, (moment) => {
    found.add(moment)
    return false
  })
  return found
})()

describe('lookTimes', () => {
  it('RES-21 early, when the peak may begin and when it has ended, on half hours and in order', () => {
    const looks = lookTimes(8, [21.4, 19.1, 23.2], trace)
    expect(looks.map(({ hour, why }) => [hour, why])).toEqual([
      [14, 'early'],
      [19, 'peak-begins'],
      [23.5, 'peak-ends'],
    ])
  })

  it('RES-21 each look says what the surface should read then', () => {
    const looks = lookTimes(8, [21.4], trace)
    const [early, peak] = looks
    expect(early?.surfaceC).toBeGreaterThan(22)
    expect(early?.surfaceC).toBeLessThan(peak?.surfaceC ?? NaN)
    expect(peak?.surfaceC).toBeCloseTo(Math.max(...trace.surfacesC), 0)
  })

  it('RES-21 looks that fall together are made once, none before the pour', () => {
    expect(lookTimes(8, [8.2], trace).map(({ hour }) => hour)).toEqual([8, 8.5])
  })
})
