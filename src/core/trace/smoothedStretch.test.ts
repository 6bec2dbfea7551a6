import { describe, expect, it } from 'vitest'
import { pointToRingDistanceMm, pxPoint, ringAreaMm2, type PxPoint } from '../geometry'
import { smoothedStretch } from './smoothedStretch'

/** A circle of 200 px, rough by the given height from point to point. */
const circle = (roughPx: number): readonly PxPoint[] =>
  Array.from({ length: 600 }, (_, n) => {
    const far = 200 + (n % 2 === 0 ? roughPx : -roughPx)
    return pxPoint(far * Math.cos((n * Math.PI) / 300), far * Math.sin((n * Math.PI) / 300))
  })
const smooth = (ring: readonly PxPoint[], spreadPx: number): readonly PxPoint[] => {
  const mended = smoothedStretch(ring, pxPoint(200, 0), pxPoint(0, 200), spreadPx)
  if (!mended.ok) throw new Error(mended.problem.code)
  return mended.value
}

describe('smoothedStretch', () => {
  it('TRC-12 takes the roughness out and keeps the bend', () => {
    const ring = smooth(circle(1.5), 8)
    const middle = ring.filter(([x, y]) => x > 50 && y > 50)
    expect(middle.length).toBeGreaterThan(20)
    for (const [x, y] of middle) expect(Math.abs(Math.hypot(x, y) - 200)).toBeLessThan(0.3)
  })

  it('TRC-12 a wide bell hardly draws a circle inwards: twicing', () => {
    const ring = smooth(circle(0), 20)
    // A single bell would draw it in by spread²/(2·200) = 1 px.
    for (const place of ring) expect(pointToRingDistanceMm(place, circle(0))).toBeLessThan(0.15)
    expect(Math.abs(ringAreaMm2(ring) / ringAreaMm2(circle(0)) - 1)).toBeLessThan(5e-4)
  })

  it('TRC-12 leaves the longer way as it is, point by point', () => {
    const rough = circle(1.5)
    const ring = smooth(rough, 8)
    const beyond = rough.filter(([x, y]) => x < -1 || y < -3)
    expect(beyond.length).toBeGreaterThan(400)
    expect(ring).toEqual(expect.arrayContaining(beyond))
  })

  it('TRC-12 a spread that is none is our own bug', () => {
    expect(() => smoothedStretch(circle(0), pxPoint(200, 0), pxPoint(0, 200), 0)).toThrow('spread')
  })
})
