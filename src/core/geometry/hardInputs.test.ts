import { describe, expect, it } from 'vitest'
import { intersectRegions, offsetRegions, regionsFromRings, subtractRegions, uniteRegions } from './booleans'
import { convexHull } from './convexHull'
import { interiorPoint } from './interiorPoint'
import { isPointInRegion } from './isPointInRing'
import { normaliseOutline } from './normaliseOutline'
import { regionsAreaMm2 } from './regionArea'
import type { Ring } from './region'
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
