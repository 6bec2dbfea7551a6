import { describe, expect, it } from 'vitest'
import type { Point } from './point'
import { pointToRingDistanceMm } from './pointDistances'
import { ringAreaMm2 } from './ringArea'
import { simplifyRing } from './simplifyRing'

const circle = (count: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    return [100 * Math.cos(angle), 100 * Math.sin(angle)]
  })

describe('simplifyRing', () => {
  it('drops vertices on straight edges and keeps corners', () => {
    const ring: Point[] = [
      [5, 0],
      [10, 0],
      [10, 5],
      [10, 10],
      [5, 10],
      [0, 10],
      [0, 0],
    ]
    expect(simplifyRing(ring, 0)).toEqual([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ])
  })

  it('no dropped vertex is further than the tolerance from what is left', () => {
    for (const toleranceMm of [0.1, 1, 5]) {
      const simple = simplifyRing(circle(1000), toleranceMm)
      expect(simple.length).toBeLessThan(1000 / 7)
      for (const p of circle(1000)) expect(pointToRingDistanceMm(p, simple)).toBeLessThanOrEqual(toleranceMm)
    }
  })

  it('does not depend on where the list starts', () => {
    const ring = circle(300).map(([x, y], i): Point => [x + (i % 7) / 3, y])
    const started = [...ring.slice(123), ...ring.slice(0, 123)]
    expect(simplifyRing(started, 0.5)).toEqual(simplifyRing(ring, 0.5))
  })

  it('keeps a ring a ring, its sign with it, however large the tolerance', () => {
    const simple = simplifyRing(circle(100), 1000)
    expect(simple).toHaveLength(3)
    expect(ringAreaMm2(simple)).toBeGreaterThan(0)
    expect(
      simplifyRing(
        [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
        1000,
      ),
    ).toHaveLength(3)
    expect(simplifyRing([], 1)).toEqual([])
  })

  it('refuses a tolerance that is none', () => {
    expect(() => simplifyRing(circle(10), -1)).toThrow(/tolerance/)
    expect(() => simplifyRing(circle(10), NaN)).toThrow(/tolerance/)
  })
})
