import { describe, expect, it } from 'vitest'
import type { Point } from './point'
import { pointToRingDistanceMm } from './pointDistances'
import type { Region } from './region'
import { regionsDistanceMm } from './regionsDistance'
import { reverseRing } from './reverseRing'

const box = (x: number, y: number, w: number, h: number): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]
const region = (outer: Point[], ...holes: Point[][]): Region => ({ outer, holes: holes.map(reverseRing) })
const wavy = (count: number, x: number, y: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const r = 100 + 10 * Math.sin(7 * angle)
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)]
  })

describe('regionsDistanceMm', () => {
  it('measures edge to edge and corner to corner', () => {
    expect(regionsDistanceMm([region(box(0, 0, 10, 10))], [region(box(13, 2, 5, 5))])).toBe(3)
    expect(regionsDistanceMm([region(box(0, 0, 10, 10))], [region(box(13, 14, 5, 5))])).toBe(5)
  })

  it('is nought when faces overlap, touch, or one lies in the other', () => {
    const a = [region(box(0, 0, 10, 10))]
    expect(regionsDistanceMm(a, [region(box(5, 5, 10, 10))])).toBe(0)
    expect(regionsDistanceMm(a, [region(box(10, 0, 10, 10))])).toBe(0)
    expect(regionsDistanceMm(a, [region(box(4, 4, 2, 2))])).toBe(0)
    expect(regionsDistanceMm([region(box(4, 4, 2, 2))], a)).toBe(0)
    // A plus sign: neither has a corner in the other.
    expect(regionsDistanceMm([region(box(-10, 4, 30, 2))], [region(box(4, -10, 2, 30))])).toBe(0)
  })

  it('a part that lies free in a hole has a distance', () => {
    const frame = region(box(0, 0, 100, 100), box(10, 10, 80, 80))
    expect(regionsDistanceMm([frame], [region(box(14, 20, 10, 10))])).toBe(4)
  })

  it('takes the nearest of several parts, either way round', () => {
    const many = [region(box(500, 0, 10, 10)), region(box(17, 0, 10, 10)), region(box(900, 0, 10, 10))]
    const one = [region(box(0, 0, 10, 10))]
    expect(regionsDistanceMm(many, one)).toBe(7)
    expect(regionsDistanceMm(one, many)).toBe(7)
  })

  it('agrees with measuring every vertex against every edge', () => {
    for (let k = 0; k < 12; k += 1) {
      const [a, b] = [wavy(150 + k, 0, 0), wavy(90, 230 + 5 * k, 40 * k)]
      const byTrial = Math.min(
        ...a.map((p) => pointToRingDistanceMm(p, b)),
        ...b.map((p) => pointToRingDistanceMm(p, a)),
      )
      expect(regionsDistanceMm([region(a)], [region(b)])).toBeCloseTo(byTrial, 12)
    }
  })

  it('refuses empty lists', () => {
    expect(() => regionsDistanceMm([], [region(box(0, 0, 1, 1))])).toThrow(/nothing/)
  })
})
