import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layerDepths } from './layerDepths'
import type { HandLayer } from './pourPlanInput'

const SEED = 20_250_705
console.info(`layerDepths properties: seed ${SEED}`)

const depths = (
  castDepthMm: number,
  limitMm: number,
  hand: readonly (number | null)[] = [],
  leastCount = 1,
) =>
  layerDepths({
    castDepthMm,
    limitMm,
    leastCount,
    hand: hand.map((depthMm): HandLayer => ({ depthMm, startHour: null })),
  })

describe('layerDepths', () => {
  it('RES-17 the fewest equal layers within the limit', () => {
    expect(depths(45, 45)).toEqual([45])
    expect(depths(46, 45)).toEqual([23, 23])
    expect(depths(100, 45)).toHaveLength(3)
  })

  it('RES-17 at least so many, where the mass calls for it', () => {
    expect(depths(45, 45, [], 3)).toEqual([15, 15, 15])
  })

  it('RES-17 a layer set by hand stays, and the rest follows', () => {
    expect(depths(90, 45, [20])).toEqual([20, 35, 35])
    expect(depths(90, 45, [null, 20])).toEqual([35, 20, 35])
    expect(depths(90, 45, [50, 40])).toEqual([50, 40])
  })

  it('RES-17 layers by hand that exceed the cast are left as they are', () => {
    expect(depths(50, 45, [40, 40])).toEqual([40, 40])
    expect(depths(50, 45, [50, null])).toEqual([50])
  })

  it('RES-17 automatic layers always add up to the cast and stay within the limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.array(fc.option(fc.double({ min: 1, max: 10, noNaN: true })), { maxLength: 3 }),
        (cast, limit, hand) => {
          const found = depths(cast + 40, limit, hand)
          expect(found.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(cast + 40, 6)
          const byHand = hand.filter((depth) => depth !== null)
          const rest = [...found]
          for (const depth of byHand) rest.splice(rest.indexOf(depth), 1)
          expect(rest.every((depth) => depth <= limit + 1e-6)).toBe(true)
        },
      ),
      { seed: SEED, numRuns: 300 },
    )
  })
})
