import { describe, expect, it } from 'vitest'
import { intersectRegions, offsetRegions, regionsFromRings, subtractRegions, uniteRegions } from './booleans'
import { convexHull } from './convexHull'
import { interiorPoint } from './interiorPoint'
import { isPointInRegion } from './isPointInRing'
import { normaliseOutline } from './normaliseOutline'
import type { Point } from './point'
import { regionsAreaMm2 } from './regionArea'
import type { Ring } from './region'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'
import { ringPerimeterMm } from './ringPerimeter'
import { ringSelfCrossing } from './ringSelfCrossing'
import { simplifyRing } from './simplifyRing'
import { HARD_VARIANTS } from '../../../tests/support/hardVariants'

// Shapes that break geometry programs, each as it is, turned by quarter turns, mirrored, and scaled. Sizes are chosen so
// that the smallest copies (a thousandth) still have faces above 1 mm²: below that, dropping them is the rule (GEO-6).

interface Fixture {
  readonly name: string
  readonly outline: Ring
  /** What normaliseOutline says: 'ok' or a problem's code. */
  readonly verdict: string
  /** Area by hand, mm², when the verdict is ok. */
  readonly areaMm2?: number
}

const fixtures: readonly Fixture[] = [
  { name: 'empty', outline: [], verdict: 'ring-too-few-points' },
  { name: 'one point', outline: [[3000, 3000]], verdict: 'ring-too-few-points' },
  {
    name: 'two points',
    outline: [
      [0, 0],
      [3000, 2000],
    ],
    verdict: 'ring-too-few-points',
  },
  {
    name: 'two points, repeated',
    outline: [
      [0, 0],
      [0, 0],
      [3000, 2000],
      [3000, 2000],
      [0, 0],
    ],
    verdict: 'ring-too-few-points',
  },
  {
    name: 'collinear',
    outline: [
      [0, 0],
      [1000, 1000],
      [3000, 3000],
    ],
    verdict: 'ring-no-area',
  },
  {
    name: 'collinear, going back',
    outline: [
      [0, 0],
      [3000, 0],
      [1000, 0],
      [2000, 0],
    ],
    verdict: 'ring-no-area',
  },
  {
    name: 'bow-tie',
    outline: [
      [0, 0],
      [3000, 3000],
      [3000, 0],
      [0, 3000],
    ],
    verdict: 'ring-crosses-itself',
  },
  {
    name: 'spike that doubles back',
    outline: [
      [0, 0],
      [3000, 0],
      [6000, 0],
      [3000, 0],
      [3000, 3000],
      [0, 3000],
    ],
    verdict: 'ring-crosses-itself',
  },
  {
    name: 'square run round twice',
    outline: [
      [0, 0],
      [3000, 0],
      [3000, 3000],
      [0, 3000],
      [0, 0],
      [3000, 0],
      [3000, 3000],
      [0, 3000],
    ],
    verdict: 'ring-crosses-itself',
  },
  {
    name: 'repeated points',
    outline: [
      [0, 0],
      [3000, 0],
      [3000, 0],
      [3000, 3000],
      [0, 3000],
      [0, 3000],
      [0, 3000],
      [0, 0],
    ],
    verdict: 'ok',
    areaMm2: 9e6,
  },
  {
    name: 'points along straight edges',
    outline: [
      [0, 0],
      [1000, 0],
      [2000, 0],
      [3000, 0],
      [3000, 1500],
      [3000, 3000],
      [0, 3000],
    ],
    verdict: 'ok',
    areaMm2: 9e6,
  },
  {
    name: 'notch whose tip touches the far edge',
    outline: [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [2000, 0],
      [0, 3000],
    ],
    verdict: 'ok',
    areaMm2: 6e6,
  },
  {
    name: 'waist that touches in one point',
    outline: [
      [0, 0],
      [2000, 2000],
      [4000, 0],
      [4000, 4000],
      [2000, 2000],
      [0, 4000],
    ],
    verdict: 'ok',
    areaMm2: 8e6,
  },
  {
    name: 'needle',
    outline: [
      [0, 0],
      [9000, 250],
      [9000, 750],
    ],
    verdict: 'ok',
    areaMm2: 2.25e6,
  },
  {
    name: 'L',
    outline: [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [2000, 2000],
      [2000, 6000],
      [0, 6000],
    ],
    verdict: 'ok',
    areaMm2: 20e6,
  },
]

const cases = fixtures.flatMap((fixture) =>
  HARD_VARIANTS.map((variant) => ({
    ...fixture,
    variant: variant.name,
    outline: fixture.outline.map(variant.map),
    expectedMm2: (fixture.areaMm2 ?? NaN) * variant.scale ** 2,
  })),
)

describe('hard outlines', () => {
  it.each(cases)('$name, $variant: $verdict (GEO-4)', ({ outline, verdict }) => {
    const result = normaliseOutline(outline)
    expect(result.ok ? 'ok' : result.problem.code).toBe(verdict)
  })

  it.each(cases)('$name, $variant: every other function answers without throwing', ({ outline }) => {
    expect(Number.isFinite(ringAreaMm2(outline) + ringPerimeterMm(outline))).toBe(true)
    expect(convexHull(outline).length).toBeLessThanOrEqual(outline.length)
    expect(simplifyRing(outline, 0.5).length).toBeLessThanOrEqual(outline.length)
    expect(() => ringSelfCrossing(outline)).not.toThrow()
    const face = regionsFromRings([outline])
    for (const { outer, holes } of [...face, ...uniteRegions(face), ...offsetRegions(face, 0.1, 'round')]) {
      expect(ringAreaMm2(outer)).toBeGreaterThanOrEqual(1)
      for (const hole of holes) expect(ringAreaMm2(hole)).toBeLessThanOrEqual(-1)
    }
  })

  it.each(cases.filter(({ verdict }) => verdict === 'ok'))(
    '$name, $variant: its area is right, clipping keeps it, and a point inside is found (GEO-1, GEO-5)',
    ({ outline, expectedMm2 }) => {
      const result = normaliseOutline(outline)
      const clean = result.ok ? result.value : []
      expect(ringAreaMm2(clean) / expectedMm2).toBeCloseTo(1, 9)
      const face = regionsFromRings([clean])
      expect(regionsAreaMm2(face) / expectedMm2).toBeCloseTo(1, 6)
      expect(regionsAreaMm2(intersectRegions(face, face)) / expectedMm2).toBeCloseTo(1, 6)
      expect(subtractRegions(face, face)).toEqual([])
      for (const region of face) expect(isPointInRegion(interiorPoint(region), region)).toBe(true)
    },
  )
})

const box = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

interface HoleFixture {
  readonly name: string
  readonly holes: readonly Ring[]
  /** Area of a 6000 mm square less these holes, by hand, mm². */
  readonly areaMm2: number
}

const holeFixtures: readonly HoleFixture[] = [
  {
    name: 'two holes that share an edge',
    holes: [box(1000, 1000, 1000, 2000), box(2000, 1000, 1000, 2000)],
    areaMm2: 36e6 - 4e6,
  },
  {
    name: 'two holes that touch in a corner',
    holes: [box(1000, 1000, 1000, 1000), box(2000, 2000, 1000, 1000)],
    areaMm2: 36e6 - 2e6,
  },
  {
    name: 'a hole that touches the outline in a point',
    holes: [
      [
        [0, 3000],
        [1500, 2000],
        [1500, 4000],
      ],
    ],
    areaMm2: 36e6 - 1.5e6,
  },
  {
    name: 'a hole that shares an edge with the outline',
    holes: [box(0, 1000, 1000, 1000)],
    areaMm2: 36e6 - 1e6,
  },
  {
    name: 'the same hole twice',
    holes: [box(2000, 2000, 1000, 1000), box(2000, 2000, 1000, 1000)],
    areaMm2: 36e6 - 1e6,
  },
  { name: 'a hole that is the whole outline', holes: [box(0, 0, 6000, 6000)], areaMm2: 0 },
  { name: 'a hole beyond the outline', holes: [box(7000, 7000, 1000, 1000)], areaMm2: 36e6 },
  { name: 'a hole that cuts the outline in two', holes: [box(2000, -1000, 1000, 8000)], areaMm2: 36e6 - 6e6 },
]

describe('hard holes', () => {
  const holeCases = holeFixtures.flatMap((fixture) =>
    HARD_VARIANTS.map((variant) => ({
      ...fixture,
      variant: variant.name,
      scale: variant.scale,
      map: variant.map,
    })),
  )

  it.each(holeCases)('$name, $variant (GEO-3, GEO-5)', ({ holes, areaMm2, scale, map }) => {
    const signed = (ring: Ring, sign: 1 | -1): Ring => {
      const mapped = ring.map(map)
      return Math.sign(ringAreaMm2(mapped)) === sign ? mapped : reverseRing(mapped)
    }
    const outline = signed(box(0, 0, 6000, 6000), 1)
    const negatives = holes.map((hole) => signed(hole, -1))
    const face = regionsFromRings([outline, ...negatives])
    const wholeMm2 = 36e6 * scale ** 2
    expect(regionsAreaMm2(face) / wholeMm2).toBeCloseTo(areaMm2 / 36e6, 6)
    // The same by subtracting solids: another road through the kernel.
    const solids = negatives.flatMap((hole) => regionsFromRings([reverseRing(hole)]))
    const other = subtractRegions(regionsFromRings([outline]), solids)
    expect(regionsAreaMm2(other) / wholeMm2).toBeCloseTo(areaMm2 / 36e6, 6)
  })
})
