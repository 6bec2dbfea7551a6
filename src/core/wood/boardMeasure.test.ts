import { describe, expect, it } from 'vitest'
import { boardMeasure } from './boardMeasure'
import { overhangSagMm, spanSagMm } from './sag'

const SIZE = { lengthMm: 2500, meanWidthMm: 800, widestMm: 1000, thicknessMm: 60 }

describe('board measure', () => {
  it('WOOD-9 longest × widest pays for the air beside the slab (by hand)', () => {
    expect(boardMeasure(SIZE, 'mean-width', 'exact').cubicMetres).toBeCloseTo(0.12, 12)
    expect(boardMeasure(SIZE, 'longest-widest', 'exact').cubicMetres).toBeCloseTo(0.15, 12)
  })

  it('WOOD-9 a half of a surface foot goes up, and a length of ten feet is ten', () => {
    // 10 ft × 10.2 in = 8.5 → 9; × 1 in.
    const board = { lengthMm: 3048, meanWidthMm: 10.2 * 25.4, widestMm: 300, thicknessMm: 25.4 }
    expect(boardMeasure(board, 'mean-width', 'surface-feet').boardFeet).toBeCloseTo(9, 9)
    expect(() => boardMeasure({ ...SIZE, thicknessMm: 0 }, 'mean-width', 'exact')).toThrow('size')
  })
})

describe('sag', () => {
  it('WOOD-10 grows with the cube of the span and falls with the cube of the thickness', () => {
    const beam = { widthMm: 800, thicknessMm: 40, elasticityGPa: 11 }
    const load = { evenN: 300, pointN: 500 }
    expect(spanSagMm(beam, 2000, load) / spanSagMm(beam, 1000, load)).toBeCloseTo(8, 9)
    const thin = { ...beam, thicknessMm: 20 }
    expect(overhangSagMm(thin, 300, load) / overhangSagMm(beam, 300, load)).toBeCloseTo(8, 9)
    expect(() => spanSagMm({ ...beam, widthMm: 0 }, 2000, load)).toThrow('stiffness')
  })
})
