import { describe, expect, it } from 'vitest'
import { baseLiftMm, holdDown, isUsablePiece, upliftKgfPerM2, type FormPiece } from './woodUplift'

const piece: FormPiece = {
  name: 'half',
  areaMm2: 1_000_000,
  thicknessMm: 50,
  densityKgPerM3: 610,
  lengthMm: 2000,
}

describe('woodUplift', () => {
  it('RES-19 resin above the piece lifts it no more', () => {
    expect(upliftKgfPerM2(80, 50, 610, 1100)).toBe(upliftKgfPerM2(50, 50, 610, 1100))
  })

  it('RES-19 a piece of 50 mm and 0.61 stays down in a first layer of 25 mm and floats in the second', () => {
    const [found] = holdDown([piece], [25, 50], 1100, 500)
    expect(found?.floatsFromMm).toBeCloseTo(27.727, 3)
    expect(found?.byLayer[0]?.forceN).toBeLessThan(0)
    expect(found?.byLayer[1]?.forceN).toBeCloseTo(24.5 * 9.80665, 6)
  })

  it('RES-19 it is held with half as much again, by bars of which there are two at least', () => {
    const [long] = holdDown([piece], [50], 1100, 500)
    expect(long?.holdN).toBeCloseTo(1.5 * 24.5 * 9.80665, 6)
    expect(long?.bars).toBe(4)
    expect((long?.forcePerBarN ?? NaN) * 4).toBeCloseTo(long?.holdN ?? NaN, 9)
    expect(long?.contactMm2PerBar).toBeCloseTo((long?.forcePerBarN ?? NaN) / 0.2, 9)
    expect(holdDown([{ ...piece, lengthMm: 200 }], [50], 1100, 500)[0]?.bars).toBe(2)
  })

  it('RES-19 wood heavier than resin needs no bar', () => {
    expect(holdDown([{ ...piece, densityKgPerM3: 1150 }], [50], 1100, 500)).toMatchObject([
      { holdN: 0, bars: 0, floatsFromMm: null },
    ])
  })

  it('RES-19 the edges of a base are drawn up by the bars, less what the resin holds down (by hand)', () => {
    const base = { spanMm: 1000, thicknessMm: 18, elasticityNPerMm2: 3000, barEveryMm: 500 }
    // I = 500·18³/12 = 243 000; 400·500³/(6·3000·243 000) = 11.431; p = 1100·9.80665·0.02 = 215.75 Pa;
    // 0.00021575·500·500⁴/(8·3000·243 000) = 1.1560.
    expect(baseLiftMm(base, 400, 20, 1100)).toBeCloseTo(11.431 - 1.156, 2)
    expect(baseLiftMm(base, 10, 50, 1100)).toBe(0)
  })

  it('RES-19 a thicker base lifts less, and doubling its thickness eight times less', () => {
    const base = { spanMm: 1000, thicknessMm: 18, elasticityNPerMm2: 3000, barEveryMm: 500 }
    const thick = baseLiftMm({ ...base, thicknessMm: 36 }, 400, 20, 1100)
    expect(baseLiftMm(base, 400, 20, 1100) / thick).toBeCloseTo(8, 9)
  })

  it('RES-9 a piece without area, thickness, length or density is not usable', () => {
    expect(isUsablePiece(piece)).toBe(true)
    for (const bad of ['areaMm2', 'thicknessMm', 'lengthMm', 'densityKgPerM3'])
      expect(isUsablePiece({ ...piece, [bad]: 0 })).toBe(false)
    expect(() => upliftKgfPerM2(10, 0, 600, 1100)).toThrow('more than zero')
  })
})
