import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import type { Point, Region, SlabPoint } from '../../src/core/geometry'
import {
  SLIVER_AREA_MM2,
  applyIsometry,
  applyIsometryToRegion,
  intersectRegions,
  regionsAreaMm2,
  ringCentroid,
  slabPoint,
  subtractRegions,
  uniteRegions,
} from '../../src/core/geometry'
import { randomSlab } from '../support/randomSlab'
import { seededRandom } from '../support/seededRandom'

// Our booleans (an integer-grid kernel) against polygon-clipping 0.15.7, an independent program that works in doubles.

type Regions = readonly Region<SlabPoint>[]
type Boolean2 = (a: Regions, b: Regions) => Regions
type MultiPolygon = ReturnType<typeof polygonClipping.union>

/**
 * Our new vertices are rounded to the grid: up to 0.00005 mm sideways along up to 12 m of boundary, 0.6 mm² at the very
 * worst. Seen on these 750 results: 0.12 mm² at most, 0.006 mm² in the middle.
 */
const AREA_TOLERANCE_MM2 = 0.25
/** The same error at an arm of up to 3 m, mostly cancelling. Seen: 133 mm³. A shift of 0.01 mm makes 1000 and more. */
const MOMENT_TOLERANCE_MM3 = 300

const asMultiPolygon = (regions: Regions): MultiPolygon =>
  regions.map(({ outer, holes }) => [outer, ...holes].map((ring) => ring.map(([x, y]) => [x, y])))

interface Measures {
  readonly areaMm2: number
  readonly xMm3: number
  readonly yMm3: number
}

/** Area and first moments by the shoelace, made positive: polygon-clipping repeats the first point, which adds nothing. */
function ringMeasures(ring: readonly Point[]): Measures {
  let [areaMm2, xMm3, yMm3] = [0, 0, 0]
  ring.forEach(([x0, y0], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length] ?? [x0, y0]
    const c = x0 * y1 - x1 * y0
    areaMm2 += c / 2
    xMm3 += ((x0 + x1) * c) / 6
    yMm3 += ((y0 + y1) * c) / 6
  })
  const sign = Math.sign(areaMm2)
  return { areaMm2: sign * areaMm2, xMm3: sign * xMm3, yMm3: sign * yMm3 }
}

/** The oracle's faces, measured under the rule that ours obey: faces and holes below 1 mm² are left out (GEO-6). */
function measuresOf(polygons: readonly (readonly (readonly Point[])[])[]): Measures {
  let [areaMm2, xMm3, yMm3] = [0, 0, 0]
  for (const rings of polygons) {
    const [outer, ...holes] = rings
      .map(ringMeasures)
      .filter((m, i) => i === 0 || m.areaMm2 >= SLIVER_AREA_MM2)
    if (outer === undefined || outer.areaMm2 < SLIVER_AREA_MM2) continue
    const hole = (pick: (m: Measures) => number): number => holes.reduce((sum, m) => sum + pick(m), 0)
    areaMm2 += outer.areaMm2 - hole((m) => m.areaMm2)
    xMm3 += outer.xMm3 - hole((m) => m.xMm3)
    yMm3 += outer.yMm3 - hole((m) => m.yMm3)
  }
  return { areaMm2, xMm3, yMm3 }
}

interface Case {
  readonly seed: number
  readonly a: Regions
  readonly b: Regions
}

/** Two slabs lying across each other at any angle, the second one turned over in half of the cases. */
function caseOf(seed: number): Case {
  const random = seededRandom(seed * 7919)
  const [a, b] = [randomSlab(seed), randomSlab(seed + 10_000)]
  const turn = {
    xMm: 0,
    yMm: 0,
    angleRad: random.between(-Math.PI, Math.PI),
    turnedOver: random.next() < 0.5,
  }
  const [aX, aY] = ringCentroid(a.outer)
  const [bX, bY] = applyIsometry(turn, ringCentroid(b.outer), slabPoint)
  const iso = { ...turn, xMm: aX - bX + random.between(-900, 900), yMm: aY - bY + random.between(-300, 300) }
  return { seed, a: [a], b: [applyIsometryToRegion(iso, b, slabPoint)] }
}

const CASES = Array.from({ length: 250 }, (_, i) => caseOf(i + 1))

/** Seeds on which a boolean differs from the oracle, with the difference. Place is compared by first moments. */
function differences(ours: Boolean2, oracle: (a: MultiPolygon, b: MultiPolygon) => MultiPolygon) {
  return CASES.flatMap(({ seed, a, b }) => {
    const ourMeasures = measuresOf(asMultiPolygon(ours(a, b)))
    const theirs = measuresOf(oracle(asMultiPolygon(a), asMultiPolygon(b)))
    const areaMm2 = Math.abs(ourMeasures.areaMm2 - theirs.areaMm2)
    const momentMm3 = Math.max(
      Math.abs(ourMeasures.xMm3 - theirs.xMm3),
      Math.abs(ourMeasures.yMm3 - theirs.yMm3),
    )
    const isSame = areaMm2 <= AREA_TOLERANCE_MM2 && momentMm3 <= MOMENT_TOLERANCE_MM3
    return isSame ? [] : [{ seed, areaMm2, momentMm3 }]
  })
}

describe('booleans on 250 pairs of random slabs agree with polygon-clipping', () => {
  it('unions (GEO-5)', () => {
    expect(differences(uniteRegions, polygonClipping.union)).toEqual([])
  })

  it('intersections (GEO-5)', () => {
    expect(differences(intersectRegions, polygonClipping.intersection)).toEqual([])
  })

  it('differences (GEO-5)', () => {
    expect(differences(subtractRegions, polygonClipping.difference)).toEqual([])
  })

  it('areas of the slabs themselves (GEO-3)', () => {
    for (const { a } of CASES) {
      const theirs = measuresOf(polygonClipping.union(asMultiPolygon(a))).areaMm2
      expect(Math.abs(regionsAreaMm2(a) - theirs)).toBeLessThan(1e-6 * theirs)
    }
  })

  it('the cases are worth comparing: most pairs overlap in part', () => {
    const shares = CASES.map(({ a, b }) => regionsAreaMm2(intersectRegions(a, b)) / regionsAreaMm2(a))
    expect(shares.filter((share) => share > 0.02 && share < 0.98).length).toBeGreaterThan(200)
  })

  it('sabotage: a union without its holes, a swapped difference and a shifted intersection are all caught', () => {
    const solid: Boolean2 = (a, b) => uniteRegions(a, b).map(({ outer }) => ({ outer, holes: [] }))
    const swapped: Boolean2 = (a, b) => subtractRegions(b, a)
    const shift = { xMm: 0.01, yMm: 0, angleRad: 0, turnedOver: false }
    const shifted: Boolean2 = (a, b) =>
      intersectRegions(a, b).map((region) => applyIsometryToRegion(shift, region, slabPoint))
    expect(differences(solid, polygonClipping.union).length).toBeGreaterThan(100)
    expect(differences(swapped, polygonClipping.difference).length).toBeGreaterThan(240)
    // The shift changes no area at all: only the comparison of places can see it.
    expect(differences(shifted, polygonClipping.intersection).length).toBeGreaterThan(100)
  })
})
