import { describe, expect, it } from 'vitest'
import { intersectRegions, offsetRegions, regionsFromRings, subtractRegions, uniteRegions } from './booleans'
import { slabPoint } from './point'
import type { SlabPoint } from './point'
import type { Region, Ring } from './region'
import { regionsAreaMm2 } from './regionArea'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'

const box = (x: number, y: number, w: number, h: number): Ring<SlabPoint> => [
  slabPoint(x, y),
  slabPoint(x + w, y),
  slabPoint(x + w, y + h),
  slabPoint(x, y + h),
]
const face = (...rings: Ring<SlabPoint>[]): readonly Region<SlabPoint>[] => regionsFromRings(rings)

describe('booleans', () => {
  it('unites, intersects and subtracts two overlapping squares (GEO-5)', () => {
    const a = face(box(0, 0, 10, 10))
    const b = face(box(5, 5, 10, 10))
    expect(regionsAreaMm2(uniteRegions(a, b))).toBe(175)
    expect(regionsAreaMm2(intersectRegions(a, b))).toBe(25)
    expect(regionsAreaMm2(subtractRegions(a, b))).toBe(75)
  })

  it('gives outer rings a positive and holes a negative sign', () => {
    const [region, ...more] = subtractRegions(face(box(0, 0, 10, 10)), face(box(3, 3, 4, 4)))
    expect(more).toEqual([])
    expect(ringAreaMm2(region?.outer ?? [])).toBe(100)
    expect(region?.holes.map(ringAreaMm2)).toEqual([-16])
  })

  it('lists an island within a hole as a region of its own', () => {
    const regions = face(box(0, 0, 30, 30), reverseRing(box(5, 5, 20, 20)), box(10, 10, 5, 5))
    expect(regions.map((r) => r.holes.length).sort((p, q) => p - q)).toEqual([0, 1])
    expect(regionsAreaMm2(regions)).toBe(900 - 400 + 25)
  })

  it('keeps the given coordinates to the last bit where the kernel keeps the vertex', () => {
    const third = 1 / 3
    const [region] = uniteRegions(face(box(third, third, 10, 10)))
    expect(region?.outer).toContainEqual([third, third])
    expect(region?.outer).toContainEqual([third + 10, third + 10])
  })

  it('a void that runs over the edge takes away only what it covers', () => {
    expect(regionsAreaMm2(face(box(0, 0, 10, 10), reverseRing(box(8, 2, 6, 5))))).toBe(90)
  })

  it('two voids that overlap take their common part away once', () => {
    const holes = [reverseRing(box(2, 2, 4, 4)), reverseRing(box(4, 4, 4, 4))]
    expect(regionsAreaMm2(face(box(0, 0, 10, 10), ...holes))).toBe(100 - 28)
  })

  it('a face in two parts that share an edge becomes one', () => {
    expect(uniteRegions(face(box(0, 0, 10, 10)), face(box(10, 0, 5, 10)))).toHaveLength(1)
  })

  it('faces and holes below 1 mm² are left out, larger ones stay (GEO-6)', () => {
    expect(face(box(0, 0, 0.9, 1))).toEqual([])
    expect(face(box(0, 0, 1.1, 1))).toHaveLength(1)
    const holes = [reverseRing(box(2, 2, 0.9, 1)), reverseRing(box(5, 5, 1.1, 1))]
    expect(face(box(0, 0, 10, 10), ...holes)[0]?.holes).toHaveLength(1)
  })

  it('crossing points lie on the grid of 1/10 000 mm (GEO-6)', () => {
    const triangle: Ring<SlabPoint> = [slabPoint(-1, 0), slabPoint(7, 3), slabPoint(-1, 9)]
    const [region] = intersectRegions(face(box(0, 0, 10, 10)), face(triangle))
    const made = region?.outer.filter(([x]) => x === 0) ?? []
    expect(made).toHaveLength(2)
    for (const [, y] of made) expect(y * 10_000).toBeCloseTo(Math.round(y * 10_000), 6)
    expect(Math.min(...made.map(([, y]) => y))).toBeCloseTo(3 / 8, 4)
  })

  it('empty lists behave as empty faces', () => {
    const a = face(box(0, 0, 10, 10))
    expect(uniteRegions([], [])).toEqual([])
    expect(intersectRegions(a, [])).toEqual([])
    expect(regionsAreaMm2(subtractRegions(a, []))).toBe(100)
    expect(subtractRegions([], a)).toEqual([])
    expect(offsetRegions([], 5, 'round')).toEqual([])
  })

  it('refuses coordinates that are not finite', () => {
    expect(() => face([slabPoint(0, 0), slabPoint(NaN, 0), slabPoint(0, 1)])).toThrow(/finite/)
    expect(() => offsetRegions(face(box(0, 0, 10, 10)), Infinity, 'round')).toThrow(/finite/)
  })
})

describe('offsetRegions', () => {
  it('grows a square by round, mitred and square corners (GEO-7)', () => {
    const a = face(box(0, 0, 100, 100))
    const round = regionsAreaMm2(offsetRegions(a, 10, 'round'))
    const exact = 10_000 + 4000 + Math.PI * 100
    expect(round).toBeLessThanOrEqual(exact)
    expect(round).toBeGreaterThan(exact - 2 * Math.PI * 10 * 0.02)
    expect(regionsAreaMm2(offsetRegions(a, 10, 'mitre'))).toBe(14_400)
    const square = regionsAreaMm2(offsetRegions(a, 10, 'square'))
    expect(square).toBeGreaterThan(exact)
    expect(square).toBeLessThan(14_400)
  })

  it('shrinking takes away the boundary band and lets holes grow', () => {
    const a = face(box(0, 0, 100, 100), reverseRing(box(40, 40, 20, 20)))
    expect(regionsAreaMm2(offsetRegions(a, -5, 'mitre'))).toBe(90 * 90 - 30 * 30)
    expect(offsetRegions(a, -21, 'mitre')).toEqual([])
  })

  it('parts that overlap are united first, so their common part is not counted twice (GEO-7)', () => {
    const overlapping = [...face(box(0, 0, 60, 100)), ...face(box(40, 0, 60, 100))]
    expect(regionsAreaMm2(offsetRegions(overlapping, 10, 'mitre'))).toBe(14_400)
  })

  it('mitred corners are sharp down to 60°; sharper ones are cut square', () => {
    const tipReachMm = (halfAngleDeg: number): number => {
      const rise = 300 * Math.tan((halfAngleDeg * Math.PI) / 180)
      const wedge = [slabPoint(0, 0), slabPoint(300, -rise), slabPoint(300, rise)]
      const grown = offsetRegions(face(wedge), 10, 'mitre')
      return -Math.min(...grown.flatMap(({ outer }) => outer.map(([x]) => x)))
    }
    expect(tipReachMm(45)).toBeCloseTo(10 * Math.SQRT2, 3)
    expect(tipReachMm(31)).toBeCloseTo(10 / Math.sin((31 * Math.PI) / 180), 3)
    expect(tipReachMm(29)).toBeCloseTo(10, 3)
  })
})
