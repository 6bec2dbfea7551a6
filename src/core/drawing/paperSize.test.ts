import { describe, expect, it } from 'vitest'
import { type PaperName, paperSize } from './paperSize'

/** PDF points are 1/72 in (ISO 32000-1, 8.3.2.3): mm / 25.4 × 72. */
const points = (mm: number): number => (mm / 25.4) * 72

describe('paperSize', () => {
  // A4 and A3: ISO 216 sizes in mm, as PDF points. Letter and Tabloid: 8.5 × 11 and 11 × 17 in × 72, whole points.
  it.each<[PaperName, number, number]>([
    ['a4', 595.275591, 841.889764],
    ['a3', 841.889764, 1190.551181],
    ['letter', 612, 792],
    ['tabloid', 792, 1224],
  ])('DRW-1 gives %s the published size in PDF points', (paper, width, height) => {
    const size = paperSize(paper)
    expect(points(size.widthMm)).toBeCloseTo(width, 5)
    expect(points(size.heightMm)).toBeCloseTo(height, 5)
  })

  it('DRW-1 turns a landscape sheet by a quarter', () => {
    expect(paperSize('a4', 'landscape')).toEqual({ widthMm: 297, heightMm: 210 })
  })
})
