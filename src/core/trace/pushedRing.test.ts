import { describe, expect, it } from 'vitest'
import { pxPoint, ringAreaMm2, ringSelfCrossing, type PxPoint } from '../geometry'
import { pushedRing } from './pushedRing'

const square: readonly PxPoint[] = [pxPoint(0, 0), pxPoint(1000, 0), pxPoint(1000, 600), pxPoint(0, 600)]

describe('pushedRing', () => {
  it('TRC-12 a short push bulges a straight side by the push in its middle, and by the area that the bell takes', () => {
    const pushed = pushedRing(square, { fromPx: pxPoint(500, 600), toPx: pxPoint(500, 605), radiusPx: 100 })
    expect(Math.max(...pushed.map(([, y]) => y))).toBeCloseTo(605, 1)
    // by hand: 5 · 100 · ∫ (1 − u²)² du from −1 to 1 = 5 · 100 · 16/15
    expect(Math.abs(ringAreaMm2(pushed) - 600_000 - (500 * 16) / 15)).toBeLessThan(6)
    expect(pushed).toEqual(expect.arrayContaining([...square]))
  })

  it('TRC-12 the bulge is smooth: many points, none far from its neighbours', () => {
    const pushed = pushedRing(square, { fromPx: pxPoint(500, 600), toPx: pxPoint(500, 700), radiusPx: 80 })
    const bulge = pushed.filter(([, y]) => y > 601)
    expect(bulge.length).toBeGreaterThan(15)
    for (const [n, [x, y]] of bulge.entries()) {
      const [u, v] = bulge[n - 1] ?? pxPoint(x, y)
      expect(Math.hypot(x - u, y - v)).toBeLessThan(20)
    }
  })

  it('TRC-12 pushed right through the opposite side the line still does not cross itself', () => {
    const pushed = pushedRing(square, { fromPx: pxPoint(500, 0), toPx: pxPoint(500, 900), radiusPx: 60 })
    expect(ringSelfCrossing(pushed)).toBeNull()
    expect(ringAreaMm2(pushed)).toBeGreaterThan(0)
  })

  it('TRC-12 a tool that touches nothing changes nothing, and one without size is our own bug', () => {
    const tool = { fromPx: pxPoint(500, 300), toPx: pxPoint(520, 300), radiusPx: 50 }
    expect(pushedRing(square, tool)).toEqual(square)
    expect(() => pushedRing(square, { ...tool, radiusPx: 0 })).toThrow('radius')
  })
})
