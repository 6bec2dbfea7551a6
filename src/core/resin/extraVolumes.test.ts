import { describe, expect, it } from 'vitest'
import { clearanceLitres, floodLitres, sealCoatKg, underCupLitres, volumeSigmaLitres } from './extraVolumes'

describe('extraVolumes', () => {
  it('RES-14 3 mm beside 2 m of wood, 50 mm deep, is 0.3 L: 8 % of an edge gap of 37.5 mm', () => {
    const space = clearanceLitres(2000, 3, 50)
    expect(space).toBeCloseTo(0.3, 12)
    expect(space / ((2000 * 37.5 * 50) / 1e6)).toBeCloseTo(0.08, 12)
  })

  it('RES-14 1.5 mm over 1.6 m² of face is 2.4 L', () => {
    expect(floodLitres(1_600_000, 1.5)).toBeCloseTo(2.4, 12)
  })

  it('RES-14 a cup of 4 mm under 2 m by 0.6 m is two thirds of its box', () => {
    expect(underCupLitres(2000, 600, 4)).toBeCloseTo(3.2, 12)
  })

  it('RES-14 a seal coat of 250 g/m² over 0.4 m² is 100 g', () => {
    expect(sealCoatKg(400_000)).toBeCloseTo(0.1, 12)
    expect(sealCoatKg(400_000, 300)).toBeCloseTo(0.12, 12)
  })

  it('RES-14 doubts that do not hang together add up in squares (3, 4 and 12 make 13)', () => {
    const doubts = {
      areaMm2: 400_000,
      areaSigmaMm2: 60_000,
      depthMm: 50,
      depthSigmaMm: 10,
      edgeLengthMm: 9_600,
      leanSigmaRad: 1,
      levelSigmaMm: 0,
    }
    // 60 000·50 = 3 L, 400 000·10 = 4 L, 9600·50²/2 = 12 L.
    expect(volumeSigmaLitres(doubts)).toBeCloseTo(13, 9)
    expect(volumeSigmaLitres({ ...doubts, levelSigmaMm: 20 })).toBeGreaterThan(13)
  })
})
