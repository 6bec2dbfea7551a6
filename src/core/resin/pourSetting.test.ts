import { describe, expect, it } from 'vitest'
import { cellsBeneath, sideWPerM2K, type PourSetting } from './pourSetting'

const setting: PourSetting = {
  room: { kind: 'steady', roomC: 21 },
  air: 'still',
  beneath: 'board-on-bench',
  woodWPerMK: 0.15,
}

describe('pourSetting', () => {
  it('RES-7 a gap without width has no sides; a wide one loses little, a narrow one much', () => {
    const loss = (widthMm: number | null): number => {
      const perSide = sideWPerM2K(50, widthMm, setting, 0.2)
      return widthMm === null ? perSide : (2 * perSide) / (widthMm / 1000)
    }
    expect(loss(null)).toBe(0)
    const losses = [20, 50, 100, 200, 400, 1000].map(loss)
    expect(losses).toEqual([...losses].sort((a, b) => b - a))
    expect((losses[5] ?? NaN) / (losses[0] ?? NaN)).toBeLessThan(0.001)
  })

  it('RES-7 the side of a narrow gap, by hand: 1/(1/√(0.15·12/0.05) + 0.05/0.8) = 4.3636', () => {
    expect(sideWPerM2K(50, 50, setting, 0.2)).toBeCloseTo(1 / (1 / 6 + 0.0625), 9)
  })

  it('RES-7 fans take more from the wood beside the gap', () => {
    const fans: PourSetting = { ...setting, air: 'fans' }
    expect(sideWPerM2K(50, 60, fans, 0.2)).toBeGreaterThan(sideWPerM2K(50, 60, setting, 0.2))
  })

  it('RES-8 beneath lies an 18 mm board on 40 mm of bench, the board alone, or nothing that takes heat', () => {
    const thickness = (beneath: PourSetting['beneath']): number =>
      cellsBeneath({ ...setting, beneath }).reduce((sum, cell) => sum + cell.thicknessM, 0)
    expect(thickness('board-on-bench')).toBeCloseTo(0.058, 12)
    expect(thickness('open')).toBeCloseTo(0.018, 12)
    expect(thickness('insulated')).toBe(0)
  })
})
