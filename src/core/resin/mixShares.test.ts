import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import { mixParts, mixShares } from './mixShares'
import type { ProductSheet } from './productSheet'

const base: ProductSheet = {
  ...EXAMPLE_SHEETS.slowCasting,
  ratioByVolume: { resin: 2, hardener: 1 },
  ratioByMass: null,
  resinDensityKgPerM3: 1150,
  hardenerDensityKgPerM3: 950,
}
const codes = (sheet: ProductSheet): readonly string[] => mixShares(sheet).notices.map(({ code }) => code)

describe('mixShares', () => {
  it('RES-10 two to one by volume is 100 to 41.3 by mass, and the mix weighs 1083.3 kg/m³ (by hand)', () => {
    const shares = mixShares(base)
    expect(shares.hardenerPerResinByMass).toBeCloseTo(950 / 2300, 12)
    expect(shares.mixedDensityKgPerM3).toBeCloseTo((2 * 1150 + 950) / 3, 9)
    expect(shares.notices).toEqual([])
  })

  it('RES-10 by mass alone the volumes follow', () => {
    const shares = mixShares({
      ...base,
      ratioByVolume: null,
      ratioByMass: { resin: 100, hardener: 950 / 23 },
    })
    expect(shares.hardenerPerResinByVolume).toBeCloseTo(0.5, 9)
  })

  it('RES-10 both ratios that agree are quiet; three and a half per cent apart they are not', () => {
    expect(codes({ ...base, ratioByMass: { resin: 100, hardener: 42 } })).toEqual([])
    expect(codes({ ...base, ratioByMass: { resin: 100, hardener: 43 } })).toEqual(['ratio-disagrees'])
  })

  it('RES-10 a mixed density that cannot follow from the parts is said', () => {
    expect(codes({ ...base, mixedDensityKgPerM3: 1200 })).toEqual(['mixed-density-disagrees'])
    expect(codes({ ...base, mixedDensityKgPerM3: 1090 })).toEqual([])
  })

  it('RES-10 without densities only what was stated is known', () => {
    const shares = mixShares({ ...base, resinDensityKgPerM3: null })
    expect(shares).toMatchObject({
      hardenerPerResinByVolume: 0.5,
      hardenerPerResinByMass: null,
      mixedDensityKgPerM3: null,
    })
    expect(shares.notices.map(({ code }) => code)).toEqual(['densities-missing'])
  })

  it('RES-10 a ratio of nought, a negative one or none at all blocks the mix', () => {
    for (const bad of [
      { resin: 0, hardener: 1 },
      { resin: 2, hardener: -1 },
      { resin: NaN, hardener: 1 },
    ])
      expect(codes({ ...base, ratioByVolume: bad })).toContain('ratio-not-positive')
    expect(codes({ ...base, ratioByVolume: null })).toContain('ratio-missing')
  })

  it('RES-10 the parts add up to the mix, by jug and by scale', () => {
    const parts = mixParts(mixShares(base), 6)
    expect(parts.resinLitres).toBeCloseTo(4, 12)
    expect(parts.hardenerLitres).toBeCloseTo(2, 12)
    expect(parts.resinKg).toBeCloseTo(4.6, 9)
    expect(parts.hardenerKg).toBeCloseTo(1.9, 9)
  })

  it('RES-10 by scale nothing is given where the mass is not known', () => {
    const parts = mixParts(mixShares({ ...base, hardenerDensityKgPerM3: null }), 6)
    expect(parts).toMatchObject({ resinLitres: 4, resinKg: null, hardenerKg: null })
  })
})
