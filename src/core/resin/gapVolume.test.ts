import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gapAreaMm2, gapBetween, gapVolumeMm3, gapWidthsMm, isUsableGap, type PourGap } from './gapVolume'

const SEED = 20_250_703
console.info(`gapVolume properties: seed ${SEED}`)

const gap: PourGap = {
  name: 'edge',
  kind: 'edge',
  sections: [
    { heightMm: 0, areaMm2: 1000, widestMm: 40, narrowestMm: 10 },
    { heightMm: 10, areaMm2: 1600, widestMm: 60, narrowestMm: 12 },
    { heightMm: 20, areaMm2: 1800, widestMm: 50, narrowestMm: 14 },
    { heightMm: 30, areaMm2: 2000, widestMm: 55, narrowestMm: 20 },
    { heightMm: 40, areaMm2: 2600, widestMm: 70, narrowestMm: 18 },
  ],
}

describe('gapVolume', () => {
  it('RES-13 the whole is Simpson over each three sections (by hand)', () => {
    const byHand = (20 / 6) * (1000 + 6400 + 1800) + (20 / 6) * (1800 + 8000 + 2600)
    expect(gapVolumeMm3(gap, 0, 40)).toBeCloseTo(byHand, 6)
  })

  it('RES-13 layers add up to the whole, wherever they are cut', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)]
          const sum = gapVolumeMm3(gap, 0, low) + gapVolumeMm3(gap, low, high) + gapVolumeMm3(gap, high, 40)
          expect(sum).toBeCloseTo(gapVolumeMm3(gap, 0, 40), 6)
        },
      ),
      { seed: SEED, numRuns: 200 },
    )
  })

  it('RES-13 beyond the gap there is nothing', () => {
    expect(gapVolumeMm3(gap, 40, 90)).toBe(0)
    expect(gapVolumeMm3(gap, -20, 90)).toBeCloseTo(gapVolumeMm3(gap, 0, 40), 6)
    expect(gapAreaMm2(gap, 41)).toBe(0)
  })

  it('RES-13 the area between the sections lies on their parabola, and is theirs at each', () => {
    for (const { heightMm, areaMm2 } of gap.sections)
      expect(gapAreaMm2(gap, heightMm)).toBeCloseTo(areaMm2, 9)
    // Through 1000, 1600, 1800 at 0, 10, 20: at 5 mm 1000·0.375 + 1600·0.75 − 1800·0.125.
    expect(gapAreaMm2(gap, 5)).toBeCloseTo(1350, 9)
  })

  it('RES-13 widths are the narrowest and the widest between two heights', () => {
    expect(gapWidthsMm(gap, 0, 40)).toEqual([10, 70])
    expect(gapWidthsMm(gap, 0, 5)).toEqual([10, 50])
    expect(gapWidthsMm(gap, 12, 18)).toEqual([12.4, 58])
    expect(gapWidthsMm(gap, 45, 60)).toBeNull()
  })

  it('RES-13 a gap between two ends has straight sides', () => {
    const straight = gapBetween(
      'edge',
      'edge',
      { heightMm: 0, areaMm2: 100, widestMm: 10, narrowestMm: 5 },
      { heightMm: 50, areaMm2: 300, widestMm: 30, narrowestMm: 15 },
    )
    expect(straight.sections[1]).toEqual({ heightMm: 25, areaMm2: 200, widestMm: 20, narrowestMm: 10 })
    expect(isUsableGap(straight)).toBe(true)
  })

  it('RES-9 sections that are too few, even, uneven, upside down, negative or without width are not usable', () => {
    const [a, b, c, d] = gap.sections
    if (a === undefined || b === undefined || c === undefined || d === undefined) throw new Error('sections')
    for (const sections of [
      [],
      [a, b],
      [a, b, c, d],
      [a, b, { ...c, heightMm: 25 }],
      [c, b, a],
      [a, { ...b, areaMm2: -1 }, c],
      [a, { ...b, narrowestMm: 0 }, c],
      [a, { ...b, narrowestMm: 90 }, c],
      [a, { ...b, areaMm2: NaN }, c],
    ])
      expect(isUsableGap({ ...gap, sections })).toBe(false)
    expect(() => gapVolumeMm3({ ...gap, sections: [a, b] }, 0, 1)).toThrow('not usable')
  })
})
