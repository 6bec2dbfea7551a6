import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatSlab } from '../../../../tests/support/flatPlan'
import { computePlan } from '../computePlan'
import { coverOdds } from './coverOdds'
import { marginAccuracy } from './marginAccuracy'
import { drawnMargins, type TightPlace } from './tightPlaces'

const part = computePlan(flatPlan(flatSlab())).slabs.get('slab')?.scale
if (part?.state !== 'ready') throw new Error('no scale')
const { scale } = part.value

/** θ as if only the height were unsure, by a thousandth: what is 1000 mm off moves by 1 mm. */
const onlyHeight = {
  ...scale,
  covariance: scale.covariance.map((_, n) => (n === 22 ? 1e-6 : n % 11 === 0 ? 1e-30 : 0)),
}
const place = (marginMm: number, perHeightMm: number, more: Partial<TightPlace> = {}): TightPlace => ({
  marginMm,
  side: 'near',
  isAtGap: true,
  shift: [0, 0, perHeightMm, 0, 0, 0, 0, 0, 0, 0],
  traceSdMm: 0,
  run: 0,
  ...more,
})
const sawn = { finish: 'sawn', oversizeMm: 0 } as const
const SIDES = { start: sawn, end: sawn, far: sawn, near: sawn }
const chanceOf = (places: readonly TightPlace[], spareMm: number): number | null =>
  marginAccuracy({ scale: onlyHeight, sides: SIDES, places, verdict: { kind: 'covers', spareMm } })
    .coverChance

describe('how likely the slab covers', () => {
  it('PLN-11 comes from the normal distribution where one place decides', () => {
    // Table of the normal distribution: Φ(0) = 0.5, Φ(1) = 0.841, Φ(2) = 0.977; 600 draws know it to about 2 %.
    expect(chanceOf([place(0, 1000)], 0)).toBeCloseTo(0.5, 1)
    expect(Math.abs((chanceOf([place(1, 1000)], 1) ?? 0) - 0.841)).toBeLessThan(0.04)
    expect(Math.abs((chanceOf([place(2, 1000)], 2) ?? 0) - 0.977)).toBeLessThan(0.02)
    expect(chanceOf([place(2, 1000)], 2)).toBe(chanceOf([place(2, 1000)], 2))
  })

  it('PLN-11 is lower where several places must hold at once, and counts what moves together once', () => {
    const together = chanceOf([place(1, 1000), place(1, 1000)], 1) ?? 0
    expect(together).toBe(chanceOf([place(1, 1000)], 1))
    // One gains what the other loses: both hold within one deviation either way, 0.683.
    expect(Math.abs((chanceOf([place(1, 1000), place(1, -1000)], 1) ?? 0) - 0.683)).toBeLessThan(0.05)
    // Two traced by themselves: 0.841².
    const traced = [0, 1].map((run) => place(1, 0, { traceSdMm: 1, run }))
    expect(Math.abs((chanceOf(traced, 1) ?? 0) - 0.708)).toBeLessThan(0.05)
  })

  it('PLN-11 states the deviation of the least margin', () => {
    const margins = drawnMargins(onlyHeight, [place(5, 1000)])
    const { marginSdMm } = marginAccuracy({
      scale: onlyHeight,
      sides: SIDES,
      places: [place(5, 1000)],
      verdict: { kind: 'covers', spareMm: 5 },
    })
    expect(margins.length).toBeGreaterThan(500)
    expect(Math.abs((marginSdMm ?? 0) - 1)).toBeLessThan(0.08)
  })

  it('PLN-11 asks only the sawn sides of a table that is short, and nothing of one that is to be filled', () => {
    const short = { kind: 'short', side: 'far', depthMm: 1, lengthMm: 100 } as const
    const places = [place(-1, 1000, { side: 'far' }), place(-40, 1000)]
    const near = { ...SIDES, near: { finish: 'filled', oversizeMm: 0 } } as const
    const chance = (sides: typeof SIDES | typeof near): number | null =>
      marginAccuracy({ scale: onlyHeight, sides, places, verdict: short }).coverChance
    expect(chance(SIDES)).toBe(0)
    expect(Math.abs((chance(near) ?? 0) - 0.159)).toBeLessThan(0.04)
    const filled = {
      kind: 'needs-fill',
      voids: 0,
      edgeGapAreaMm2: 1,
      filledShare: 0,
      worstSide: 'far',
      depthMm: 1,
    } as const
    const said = marginAccuracy({ scale: onlyHeight, sides: near, places, verdict: filled })
    expect(said.coverChance).toBeNull()
    expect(Math.abs((said.marginSdMm ?? 0) - 1)).toBeLessThan(0.08)
  })

  it('PLN-11 is said in a word', () => {
    expect([1, 0.99, 0.95, 0.7, 0.5, 0.2, 0.05, 0].map(coverOdds)).toEqual([
      'almost-surely',
      'almost-surely',
      'very-likely',
      'likely',
      'as-likely-as-not',
      'not-likely',
      'hardly',
      'almost-surely-not',
    ])
  })

  it('PLN-11 a table laid well inside the slab almost surely fits, and one without an edge to spare hardly', () => {
    const chance = (widthMm: number): number | null => {
      const option = flatOption(1000, widthMm, { xMm: 300, yMm: 300 - widthMm / 2 })
      const found = computePlan(flatPlan(flatSlab(), option)).options.get('option')
      return found?.accuracy.state === 'ready' ? (found.accuracy.value?.coverChance ?? null) : null
    }
    expect(chance(600)).toBeGreaterThan(0.99)
    // Flush at both sides: wood wants to be there at all places of both at once.
    expect(chance(899.9)).toBeLessThan(0.5)
    expect(chance(600)).toBeGreaterThan(chance(895) ?? 1)
  })
})
