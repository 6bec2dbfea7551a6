import { describe, expect, it } from 'vitest'
import { tableRing, isOnWood } from '../../../../tests/support/coverReference'
import { slabPoint } from '../../geometry'
import { searchWood } from './searchWood'
import { twoSlabs } from './twoSlabs'

function candidate(id: string, lengthMm: number, widthMm: number) {
  const outer = tableRing(lengthMm, widthMm).map(([x, y]) =>
    slabPoint(0.96 * x - 0.28 * y, 0.28 * x + 0.96 * y),
  )
  const wood = searchWood([{ outer, holes: [] }])
  if (!wood.ok) throw new Error(wood.problem.code)
  return { id, wood: wood.value, grain: null }
}

const slabs = [
  candidate('a', 2400, 500),
  candidate('b', 2600, 460),
  candidate('c', 2500, 300),
  candidate('short', 1500, 900),
]

describe('twoSlabs', () => {
  it('LAY-20 ranks wood to wood with the least to spare first, then the narrowest band', () => {
    const state = twoSlabs({
      slabs,
      lengthMm: 2300,
      widthMm: 900,
      jointMm: 4,
      mostBandMm: 250,
      toleranceMm: 2,
    }).step(Infinity)
    const pairs = state.incumbent ?? []
    expect(pairs.map(({ first, second, join }) => [first.id, second.id, join])).toEqual([
      ['a', 'b', 'rip'],
      ['a', 'c', 'band'],
      ['b', 'c', 'band'],
    ])
    // 500 + 460 − 4 − 900; 900 − 500 − 300; 900 − 460 − 300. A strip may be a little wider when tilted: never narrower.
    expect(Math.abs((pairs[0]?.spareMm ?? 0) - 56)).toBeLessThan(1)
    expect(Math.abs((pairs[1]?.bandMm ?? 0) - 100)).toBeLessThan(1)
    expect(Math.abs((pairs[2]?.bandMm ?? 0) - 140)).toBeLessThan(1)
  })

  it('LAY-20 lays each strip along the table, on wood', () => {
    const state = twoSlabs({
      slabs: slabs.slice(0, 2),
      lengthMm: 2300,
      widthMm: 900,
      jointMm: 4,
      mostBandMm: 0,
      toleranceMm: 2,
    }).step(Infinity)
    const [pair] = state.incumbent ?? []
    for (const strip of [pair?.first, pair?.second]) {
      const slab = slabs.find(({ id }) => id === strip?.id)
      if (strip === undefined || slab === undefined) throw new Error('no strip')
      const inset = tableRing(2299.8, strip.widthMm - 0.2)
      const [cos, sin] = [Math.cos(strip.pose.angleRad), Math.sin(strip.pose.angleRad)]
      const at = {
        ...strip.pose,
        xMm: strip.pose.xMm + 0.1 * (cos - sin),
        yMm: strip.pose.yMm + 0.1 * (sin + cos),
      }
      expect(isOnWood(slab.wood.regions, inset, at)).toBe(true)
    }
  })
})
