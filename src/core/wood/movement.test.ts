import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { acrossShrinkageFraction } from './species'
import { equilibriumMoistureFraction, humidityForMoisture } from './equilibriumMoisture'
import { movementBandMm, movementMm, slotLengthMm } from './movement'
import { speciesNamed, WOOD_SPECIES } from './speciesTable'

const SEED = 20_261_125
console.info(`wood properties: seed ${SEED}`)

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('movement', () => {
  it('WOOD-3 returns to the same size, and is narrower when drier', () => {
    fc.assert(
      fc.property(share(0, 0.5), share(0, 0.5), share(0.01, 0.2), share(10, 2000), (from, to, s, size) => {
        const later = size + movementMm(size, from, to, s)
        expect(later + movementMm(later, to, from, s)).toBeCloseTo(size, 6)
        if (to < from) expect(movementMm(size, from, to, s)).toBeLessThanOrEqual(0)
      }),
      { seed: SEED },
    )
  })

  it('WOOD-3 does not move above 30 % of water', () => {
    expect(movementMm(800, 0.6, 0.35, 0.08)).toBe(0)
    expect(movementMm(800, 0.6, 0.1, 0.08)).toBe(movementMm(800, 0.3, 0.1, 0.08))
  })

  it('WOOD-3 takes the tangential figure across a flat-sawn slab and the radial one across a quartered', () => {
    const walnut = speciesNamed('walnut')
    if (walnut === null) throw new Error('no walnut')
    expect(acrossShrinkageFraction(walnut, 'flat')).toBeCloseTo(0.078, 12)
    expect(acrossShrinkageFraction(walnut, 'quarter')).toBeCloseTo(0.055, 12)
    expect(acrossShrinkageFraction(walnut, 'between')).toBeCloseTo(0.0665, 12)
  })

  it('WOOD-3 refuses a shrinkage that is none', () => {
    expect(() => movementMm(800, 0.1, 0.2, 0)).toThrow('shrinkage')
    expect(movementBandMm(-8)).toEqual([6, 10])
  })

  it('WOOD-4 a slot holds the screw, the movement and a millimetre (by hand)', () => {
    expect(slotLengthMm(400, 0.01, 6)).toBe(11)
    expect(slotLengthMm(-400, -0.01, 6)).toBe(11)
  })
})

describe('equilibrium moisture', () => {
  it('WOOD-2 rises with humidity, and the way back finds the humidity', () => {
    fc.assert(
      fc.property(share(0, 40), share(0.05, 0.94), share(0.001, 0.05), (t, h, more) => {
        const moisture = equilibriumMoistureFraction(t, h)
        expect(equilibriumMoistureFraction(t, h + more)).toBeGreaterThan(moisture)
        expect(humidityForMoisture(t, moisture)).toBeCloseTo(h, 9)
      }),
      { seed: SEED },
    )
    expect(equilibriumMoistureFraction(20, 0)).toBe(0)
    expect(humidityForMoisture(20, 0.5)).toBe(1)
    expect(() => equilibriumMoistureFraction(20, 1.2)).toThrow('out of range')
  })
})

describe('the table of kinds of wood', () => {
  it('WOOD-1 has 25 kinds and more, each with sane figures and an id of its own', () => {
    expect(WOOD_SPECIES.length).toBeGreaterThanOrEqual(25)
    expect(new Set(WOOD_SPECIES.map(({ id }) => id)).size).toBe(WOOD_SPECIES.length)
    for (const {
      gravity,
      radialFraction,
      tangentialFraction,
      volumetricFraction,
      elasticityGPa,
    } of WOOD_SPECIES) {
      expect(gravity.value).toBeGreaterThan(0.25)
      expect(gravity.value).toBeLessThan(0.9)
      expect(tangentialFraction.value).toBeGreaterThan(radialFraction.value)
      // Radial and tangential together make nearly the whole of it: along the grain there is next to none.
      const together = radialFraction.value + tangentialFraction.value
      expect(volumetricFraction.value).toBeGreaterThan(together * 0.8)
      expect(volumetricFraction.value).toBeLessThan(together * 1.35)
      expect(elasticityGPa?.value ?? 10).toBeGreaterThan(5)
    }
  })

  it('WOOD-1 finds a kind by what makers call it, and nothing by likeness', () => {
    expect(speciesNamed('Ash')?.id).toBe('ash-white')
    expect(speciesNamed(' white ash ')?.id).toBe('ash-white')
    expect(speciesNamed('Ash, white')?.id).toBe('ash-white')
    expect(speciesNamed('Juglans nigra')?.id).toBe('walnut-black')
    expect(speciesNamed('walnut-black')?.id).toBe('walnut-black')
    expect(speciesNamed('plane')?.id).toBe('sycamore')
    expect(speciesNamed('walnuts')).toBeNull()
    expect(speciesNamed('')).toBeNull()
  })
})
