import { describe, expect, it } from 'vitest'
import { itemAt } from './itemAt'
import type { Point } from './point'
import { ringSelfCrossing } from './ringSelfCrossing'

const wavy = (count: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const r = 500 + 40 * Math.sin(17 * angle) + 3 * Math.sin(301 * angle)
    return [3 * r * Math.cos(angle), r * Math.sin(angle)]
  })

describe('ringSelfCrossing (GEO-4, GEO-9)', () => {
  it('finds nothing in clean rings', () => {
    expect(
      ringSelfCrossing([
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ]),
    ).toBeNull()
    expect(ringSelfCrossing(wavy(5000))).toBeNull()
    expect(ringSelfCrossing([])).toBeNull()
    expect(ringSelfCrossing([[1, 1]])).toBeNull()
  })

  it('finds the crossing of a bow-tie', () => {
    expect(
      ringSelfCrossing([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ).toEqual({ a: 0, b: 2, at: [5, 5] })
  })

  it('of several crossings gives the one of the lowest edges', () => {
    const star = [0, 2, 4, 1, 3].map((k): Point => {
      const angle = (2 * Math.PI * k) / 5
      return [Math.cos(angle), Math.sin(angle)]
    })
    expect(ringSelfCrossing(star)).toMatchObject({ a: 0, b: 2 })
  })

  it('touching itself in a point without changing sides is allowed', () => {
    // The tip (5, 5) of a notch just meets a vertex, then the middle of an edge.
    expect(
      ringSelfCrossing([
        [0, 0],
        [5, 5],
        [10, 0],
        [10, 10],
        [5, 5],
        [0, 10],
      ]),
    ).toBeNull()
    expect(
      ringSelfCrossing([
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ]),
    ).toBeNull()
  })

  it('changing sides through a shared vertex is a crossing', () => {
    const eight: Point[] = [
      [0, 0],
      [5, 5],
      [10, 10],
      [10, 0],
      [5, 5],
      [0, 10],
    ]
    expect(ringSelfCrossing(eight)).toMatchObject({ at: [5, 5] })
  })

  it('changing sides through a vertex that lies on another edge is a crossing', () => {
    const ring: Point[] = [
      [0, 0],
      [10, 0],
      [10, 5],
      [5, 0],
      [2, -5],
      [0, -5],
    ]
    expect(ringSelfCrossing(ring)).toMatchObject({ at: [5, 0] })
  })

  it('running along itself for some length is a crossing, a spike that doubles back too', () => {
    expect(
      ringSelfCrossing([
        [0, 0],
        [10, 0],
        [10, 10],
        [8, 0],
        [2, 0],
        [0, 10],
      ]),
    ).not.toBeNull()
    expect(
      ringSelfCrossing([
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 20],
        [10, 10],
        [0, 10],
      ]),
    ).not.toBeNull()
    expect(
      ringSelfCrossing([
        [0, 0],
        [5, 5],
      ]),
    ).not.toBeNull()
  })

  it('repeated points are passed over', () => {
    expect(
      ringSelfCrossing([
        [0, 0],
        [0, 0],
        [10, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 0],
      ]),
    ).toBeNull()
    const bowTie: Point[] = [
      [0, 0],
      [10, 10],
      [10, 10],
      [10, 0],
      [0, 10],
    ]
    expect(ringSelfCrossing(bowTie)).toEqual({ a: 0, b: 3, at: [5, 5] })
  })

  it('is exact: a vertex one last bit across an edge is told from one on it', () => {
    const ring = (y: number): Point[] => [
      [0, 0],
      [3, 1],
      [6, 2],
      [6, 9],
      [3, y],
      [0, 9],
    ]
    expect(ringSelfCrossing(ring(1))).toBeNull()
    expect(ringSelfCrossing(ring(1 + 2 ** -52))).toBeNull()
    expect(ringSelfCrossing(ring(1 - 2 ** -53))).not.toBeNull()
  })

  it('agrees with trying every pair, on rings scrambled a little', () => {
    for (let shift = 1; shift <= 40; shift += 1) {
      const ring = wavy(60)
      const i = (shift * 7) % 60
      const j = (i + 1 + (shift % 5)) % 60
      const swapped = ring.map((p, k) => (k === i ? itemAt(ring, j) : k === j ? itemAt(ring, i) : p))
      expect(ringSelfCrossing(swapped) !== null).toBe(isCrossingByTrial(swapped))
    }
  })

  it('takes 5000 vertices in far less than the time of 12 million pairs', () => {
    // A count instead of a clock would be better still; the bound is fifty times what it takes.
    const start = performance.now()
    expect(ringSelfCrossing(wavy(5000))).toBeNull()
    expect(performance.now() - start).toBeLessThan(1500)
  })
})

/** Strict crossings in the plain way, in doubles: good enough away from touching. */
function isCrossingByTrial(ring: Point[]): boolean {
  const turn = (a: Point, b: Point, p: Point): number =>
    (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
  const n = ring.length
  for (let i = 0; i < n; i += 1)
    for (let j = i + 2; j < n; j += 1) {
      const [a, b, c, d] = [i, (i + 1) % n, j, (j + 1) % n].map((k) => itemAt(ring, k)) as [
        Point,
        Point,
        Point,
        Point,
      ]
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true
    }
  return false
}
