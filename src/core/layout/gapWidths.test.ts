import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Region, regionAreaMm2, ringPerimeterMm, tablePoint, type TablePoint } from '../geometry'
import { gapWidthsMm, NARROW_SHARE } from './gapWidths'

const SEED = 20_260_714
console.info(`gapWidths properties: seed ${SEED}`)

const region = (points: readonly (readonly [number, number])[]): Region<TablePoint> => ({
  outer: points.map(([x, y]) => tablePoint(x, y)),
  holes: [],
})
const box = (lengthMm: number, widthMm: number): Region<TablePoint> =>
  region([
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm],
  ])

/** Half angles of a triangle by the law of cosines. */
function cotangentsOfHalfAngles(points: readonly (readonly [number, number])[]): number {
  return points.reduce((sum, b, i) => {
    const a = points[(i + 2) % 3] ?? b
    const c = points[(i + 1) % 3] ?? b
    const [u, v] = [
      [a[0] - b[0], a[1] - b[1]],
      [c[0] - b[0], c[1] - b[1]],
    ] as const
    const cos = (u[0] * v[0] + u[1] * v[1]) / (Math.hypot(...u) * Math.hypot(...v))
    return sum + 1 / Math.tan(Math.acos(cos) / 2)
  }, 0)
}

describe('gapWidthsMm', () => {
  it('LAY-40 a band is as wide as it is wide (by hand)', () => {
    const { widestMm } = gapWidthsMm(box(1500, 60))
    expect(widestMm).toBeGreaterThan(60 * 0.98)
    expect(widestMm).toBeLessThanOrEqual(60 + 1e-9)
  })

  it('LAY-40 a triangle is as wide as its incircle, radius area / half perimeter (any textbook)', () => {
    const triangle = region([
      [0, 0],
      [400, 0],
      [0, 300],
    ])
    // 3-4-5 triangle: r = 60 000 / 600 = 100.
    const radius = regionAreaMm2(triangle) / (ringPerimeterMm(triangle.outer) / 2)
    expect(radius).toBeCloseTo(100, 9)
    const { widestMm } = gapWidthsMm(triangle)
    expect(widestMm).toBeGreaterThan(200 * 0.98)
    expect(widestMm).toBeLessThanOrEqual(200 + 1e-6)
  })

  it('LAY-40 two bands that meet are wider at the corner than either', () => {
    const corner = region([
      [0, 0],
      [600, 0],
      [600, 50],
      [50, 50],
      [50, 600],
      [0, 600],
    ])
    // A circle in the corner touches both outer sides and the inner corner: r(1 + 1/√2)·√2 = 50·√2.
    const widest = (2 * 50 * Math.SQRT2) / (1 + Math.SQRT2)
    const found = gapWidthsMm(corner)
    expect(found.widestMm).toBeGreaterThan(widest * 0.98)
    expect(found.widestMm).toBeLessThanOrEqual(widest + 1e-6)
    expect(found.narrowestMm).toBeGreaterThan(48)
    expect(found.narrowestMm).toBeLessThan(53)
  })

  it('LAY-41 a band is nowhere narrower than it is wide, though its corners are lost', () => {
    const found = gapWidthsMm(box(1500, 60))
    expect(found.narrowestMm).toBe(found.widestMm)
  })

  it('LAY-41 a neck that holds more of the gap than the share counts, a shorter one does not', () => {
    const dumbbell = (neckMm: number): Region<TablePoint> =>
      region([
        [0, 0],
        [200, 0],
        [200, 90],
        [200 + neckMm, 90],
        [200 + neckMm, 0],
        [400 + neckMm, 0],
        [400 + neckMm, 200],
        [200 + neckMm, 200],
        [200 + neckMm, 110],
        [200, 110],
        [200, 200],
        [0, 200],
      ])
    // Neck 20 mm wide: 400 long is 8000 of 88 000 mm² (9 %), 60 long is 1200 of 81 200 mm² (1.5 %).
    expect(gapWidthsMm(dumbbell(400)).narrowestMm).toBeCloseTo(20, 0)
    expect(gapWidthsMm(dumbbell(60)).narrowestMm).toBeGreaterThan(60)
  })

  it('LAY-41 a triangle loses its tips as by hand: r²·(Σ cot(α/2) − π) of its area', () => {
    const points = [
      [0, 0],
      [900, 0],
      [300, 60],
    ] as const
    const wedge = region(points)
    const lostPerR2 = cotangentsOfHalfAngles(points) - Math.PI
    const expected = 2 * Math.sqrt((NARROW_SHARE * regionAreaMm2(wedge)) / lostPerR2)
    expect(gapWidthsMm(wedge).narrowestMm).toBeGreaterThan(expected * 0.98)
    expect(gapWidthsMm(wedge).narrowestMm).toBeLessThan(expected * 1.02)
  })

  it('LAY-40 LAY-41 the narrowest is never above the widest, both grow with the gap', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 5, max: 90 }), { minLength: 4, maxLength: 9 }),
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        (depths, scale) => {
          const edge = depths.map((depth, i) => [i * 120, depth] as const)
          const at = (k: number): Region<TablePoint> =>
            region(
              [
                [(depths.length - 1) * 120 * k, 0],
                ...edge.toReversed().map(([x, y]) => [x * k, y * k] as const),
                [0, 0],
              ]
                .toReversed()
                .map(([x, y]) => [x ?? 0, y ?? 0] as const),
            )
          const [one, other] = [gapWidthsMm(at(1)), gapWidthsMm(at(scale))]
          expect(one.narrowestMm).toBeGreaterThan(0)
          expect(one.narrowestMm).toBeLessThanOrEqual(one.widestMm)
          // Simplifying by 0.5 mm and the 2 % of the circle are all that scale differently.
          expect(Math.abs(other.widestMm / scale - one.widestMm)).toBeLessThan(0.04 * one.widestMm + 3)
        },
      ),
      { seed: SEED, numRuns: 60 },
    )
  })
})
