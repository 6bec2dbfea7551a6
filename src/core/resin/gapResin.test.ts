import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gapResin, type CastChoice, type GapToFill } from './gapResin'

const SEED = 20_250_701
console.info(`gapResin properties: seed ${SEED}`)

const choice: CastChoice = {
  castThicknessMm: 50,
  slabThicknessMm: 50,
  woodAreaMm2: 1_200_000,
  lossFraction: 0.1,
  densityKgPerM3: 1100,
}
const edge: GapToFill = { kind: 'edge', areaMm2: 200_000, depthMm: null }

describe('gapResin', () => {
  it('RES-1 an edge gap of 0.2 m² and 50 mm takes 10 L (by hand)', () => {
    expect(gapResin([edge], choice)).toMatchObject({ edgeGapLitres: 10, voidLitres: 0, gapLitres: 10 })
  })

  it('RES-2 a hole that does not go through takes its own depth only', () => {
    const found = gapResin([{ kind: 'void', areaMm2: 10_000, depthMm: 20 }], choice)
    expect(found.voidLitres).toBeCloseTo(0.2, 12)
  })

  it('RES-2 a hole deeper than the cast takes no more than the cast', () => {
    const found = gapResin([{ kind: 'void', areaMm2: 10_000, depthMm: 80 }], choice)
    expect(found.voidLitres).toBeCloseTo(0.5, 12)
  })

  it('RES-3 a cast 2 mm thicker floods the wood and the hole in it', () => {
    const thicker = { ...choice, castThicknessMm: 52 }
    const found = gapResin([{ kind: 'void', areaMm2: 10_000, depthMm: 20 }], thicker)
    expect(found.floodLitres).toBeCloseTo(2.4, 12)
    expect(found.voidLitres).toBeCloseTo(0.22, 12)
  })

  it('RES-3 what is mixed is what fills and the loss, in litres and kilograms', () => {
    const found = gapResin([edge], choice)
    expect(found.mixLitres).toBeCloseTo(11, 12)
    expect(found.mixKg).toBeCloseTo(12.1, 12)
    expect(gapResin([edge], { ...choice, densityKgPerM3: null }).mixKg).toBeNull()
  })

  it('RES-1 twice the area takes twice the resin, and more depth never less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        fc.integer({ min: 1, max: 100 }),
        (area, mm) => {
          const litres = (areaMm2: number, castThicknessMm: number): number =>
            gapResin([{ ...edge, areaMm2 }], { ...choice, castThicknessMm }).gapLitres
          expect(Math.abs(litres(2 * area, 50) - 2 * litres(area, 50))).toBeLessThanOrEqual(1e-12 * area)
          expect(litres(area, mm + 1)).toBeGreaterThan(litres(area, mm))
        },
      ),
      { seed: SEED, numRuns: 200 },
    )
  })

  it('RES-1 a thickness or a density that is not above zero is our own bug', () => {
    expect(() => gapResin([edge], { ...choice, castThicknessMm: 0 })).toThrow('must be more than zero')
    expect(() => gapResin([edge], { ...choice, densityKgPerM3: NaN })).toThrow('must be more than zero')
  })
})
