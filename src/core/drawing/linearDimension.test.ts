import { describe, expect, it } from 'vitest'
import type { Point } from '../geometry'
import { linearDimension, uprightAngle } from './linearDimension'
import { sheetProblems } from './sheetProblems'
import type { DrawItem, Sheet } from './sheet'

const sheetOf = (items: readonly DrawItem[]): Sheet => ({
  title: 'Dimensions',
  paper: 'a4',
  orientation: 'portrait',
  widthMm: 210,
  heightMm: 297,
  items,
})

const dimensionAt = (degrees: number, lengthMm: number, offsetMm: number): readonly DrawItem[] => {
  const angle = (degrees * Math.PI) / 180
  const from: Point = [105, 148]
  const to: Point = [from[0] + lengthMm * Math.cos(angle), from[1] + lengthMm * Math.sin(angle)]
  return linearDimension({ from, to, offsetMm, text: '1850 mm', sizeMm: 3.8 })
}

describe('linearDimension', () => {
  it.each([8, 3, 20, 60])('DRW-9 is legible in every direction, %i mm long', (lengthMm) => {
    for (let degrees = 0; degrees < 360; degrees += 15) {
      for (const offsetMm of [-12, 12]) {
        const items = dimensionAt(degrees, lengthMm, offsetMm)
        expect({ degrees, offsetMm, problems: sheetProblems(sheetOf(items)) }).toEqual({
          degrees,
          offsetMm,
          problems: [],
        })
      }
    }
  })

  it('DRW-9 reads level texts from below and upright ones from the right', () => {
    // ISO 129-1: values are read from the bottom or from the right of the drawing.
    expect(uprightAngle(0)).toBe(0)
    expect(uprightAngle(Math.PI)).toBeCloseTo(0, 12)
    expect(uprightAngle(Math.PI / 2)).toBeCloseTo(-Math.PI / 2, 12)
    expect(uprightAngle(-Math.PI / 2)).toBeCloseTo(-Math.PI / 2, 12)
    expect(uprightAngle((3 * Math.PI) / 4)).toBeCloseTo(-Math.PI / 4, 12)
  })

  it('DRW-9 has its arrows on the extension lines, at the stated distance', () => {
    const items = linearDimension({ from: [20, 50], to: [80, 50], offsetMm: 10, text: '600 mm', sizeMm: 3.8 })
    const tips = items.flatMap((item) => (item.kind === 'polygon' ? [item.rings[0]![0]] : []))
    expect(tips).toEqual([
      [20, 60],
      [80, 60],
    ])
  })
})
