import { describe, expect, it } from 'vitest'
import {
  IDENTITY_ISOMETRY,
  applyIsometry,
  applyIsometryToRegion,
  applyIsometryToRing,
  composeIsometries,
  invertIsometry,
} from './isometries'
import type { Isometry } from './isometry'
import { slabPoint, tablePoint } from './point'
import { pointDistanceMm } from './pointArithmetic'
import { ringAreaMm2 } from './ringArea'

const quarter: Isometry = { xMm: 100, yMm: 50, angleRad: Math.PI / 2, turnedOver: false }
const flipped: Isometry = { xMm: -7, yMm: 3, angleRad: 0.4, turnedOver: true }
const square = [slabPoint(0, 0), slabPoint(10, 0), slabPoint(10, 10), slabPoint(0, 10)]

describe('isometries', () => {
  it('a quarter turn brings x to y (y down), then moves', () => {
    const [x, y] = applyIsometry(quarter, slabPoint(10, 0), tablePoint)
    expect(x).toBeCloseTo(100, 12)
    expect(y).toBeCloseTo(60, 12)
  })

  it('turning over happens before turning', () => {
    const iso: Isometry = { xMm: 0, yMm: 0, angleRad: Math.PI / 2, turnedOver: true }
    const [x, y] = applyIsometry(iso, slabPoint(0, 1), tablePoint)
    expect(x).toBeCloseTo(1, 12)
    expect(y).toBeCloseTo(0, 12)
  })

  it.each([quarter, flipped, IDENTITY_ISOMETRY])('keeps lengths and comes back (GEO-8) %#', (iso) => {
    const [a, b] = [slabPoint(12, -5), slabPoint(400, 33)]
    const placed = [a, b].map((p) => applyIsometry(iso, p, tablePoint))
    const [placedA, placedB] = [placed[0] ?? a, placed[1] ?? b]
    expect(pointDistanceMm(placedA, placedB)).toBeCloseTo(pointDistanceMm(a, b), 9)
    const back = applyIsometry(invertIsometry(iso), placedA, slabPoint)
    expect(back[0]).toBeCloseTo(a[0], 9)
    expect(back[1]).toBeCloseTo(a[1], 9)
  })

  it('composing does the inner placement first (GEO-8)', () => {
    const p = slabPoint(3, 4)
    for (const [outer, inner] of [
      [quarter, flipped],
      [flipped, quarter],
      [flipped, flipped],
    ] as const) {
      const twice = applyIsometry(outer, applyIsometry(inner, p, slabPoint), slabPoint)
      const once = applyIsometry(composeIsometries(outer, inner), p, slabPoint)
      expect(once[0]).toBeCloseTo(twice[0], 9)
      expect(once[1]).toBeCloseTo(twice[1], 9)
    }
  })

  it('rings keep their sign, also when turned over (GEO-8)', () => {
    const placed = applyIsometryToRing(flipped, square, tablePoint)
    expect(ringAreaMm2(placed)).toBeCloseTo(100, 9)
    expect(placed[0]).toEqual(applyIsometry(flipped, slabPoint(0, 0), tablePoint))
    const region = { outer: square, holes: [[slabPoint(2, 2), slabPoint(2, 4), slabPoint(4, 4)]] }
    const moved = applyIsometryToRegion(flipped, region, tablePoint)
    expect(ringAreaMm2(moved.outer)).toBeCloseTo(100, 9)
    expect(ringAreaMm2(moved.holes[0] ?? [])).toBeCloseTo(-2, 9)
  })
})
