import { describe, expect, it } from 'vitest'
import { ringAreaMm2, slabPoint } from '../geometry'
import { maskOutline } from './maskOutline'
import { maskParts, withoutHoles, type Mask } from './maskRegions'
import { ringMask } from './ringMask'

const maskOf = (rows: readonly string[]): Mask => ({
  widthPx: rows[0]?.length ?? 0,
  heightPx: rows.length,
  inside: Uint8Array.from(rows.join(''), (letter) => (letter === '#' ? 1 : 0)),
})

const areaOf = (mask: Mask): number => ringAreaMm2(maskOutline(mask).map(([x, y]) => slabPoint(x, y)))

describe('masks and their outlines', () => {
  it('TRC-8 an outline is a positive ring with the area of its pixels', () => {
    expect(areaOf(maskOf(['....', '.##.', '.#..', '....']))).toBe(3)
  })

  it('TRC-8 takes the part with the longest rim, reaches the frame, and parts touching at corners stay apart', () => {
    expect(areaOf(maskOf(['##..', '##..', '..#.', '....']))).toBe(4)
    expect(maskParts(maskOf(['##..', '##..', '..#.', '....'])).map((part) => part.length)).toEqual([4, 1])
  })

  it('TRC-8 holes are filled', () => {
    expect(areaOf(withoutHoles(maskOf(['.....', '.###.', '.#.#.', '.###.', '.....'])))).toBe(9)
  })

  it('TRC-8 filling an outline gives the mask back', () => {
    const mask = maskOf(['......', '.###..', '.####.', '...#..', '......'])
    expect(ringMask(maskOutline(mask), 6, 5, 1)).toEqual(mask)
  })
})
