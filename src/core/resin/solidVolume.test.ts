import { describe, expect, it } from 'vitest'
import { solidVolumeMm3 } from './solidVolume'

describe('solidVolumeMm3', () => {
  it('RES-13 a cubic section is exact: ∫ z³ from 0 to 2 is 4', () => {
    expect(solidVolumeMm3((z) => z ** 3, 0, 2)).toBeCloseTo(4, 12)
  })

  it('RES-13 heights are doubled until the volume holds still: ∫ sin from 0 to π is 2', () => {
    let count = 0
    const area = (z: number): number => {
      count += 1
      return Math.max(0, Math.sin(z))
    }
    expect(Math.abs(solidVolumeMm3(area, 0, Math.PI, 1e-6) - 2)).toBeLessThan(1e-6)
    expect(count).toBeLessThan(200)
  })

  it('RES-13 nothing between equal heights; heights upside down and negative areas are our own bugs', () => {
    expect(solidVolumeMm3(() => 5, 3, 3)).toBe(0)
    expect(() => solidVolumeMm3(() => 5, 3, 2)).toThrow('in order')
    expect(() => solidVolumeMm3(() => -1, 0, 1)).toThrow('must have an area')
  })
})
