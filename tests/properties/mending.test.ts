import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  pointToRingDistanceMm,
  pxPoint,
  ringSelfCrossing,
  slabPoint,
  type PxPoint,
  type Ring,
} from '../../src/core/geometry'
import {
  areaChange,
  pushedRing,
  redrawnStretch,
  smoothedStretch,
  straightenedStretch,
  thinnedRing,
} from '../../src/core/trace'
import { fillRing } from '../bench/trace/touches'

const SEED = 20_261
const RUNS = { seed: SEED, numRuns: 60 }
console.log(`mending: seed ${SEED}`)

/** A wavy outline about (500, 400) that does not cross itself: its distance from there is never nought. */
const outline = fc
  .record({
    count: fc.integer({ min: 12, max: 400 }),
    waves: fc.array(
      fc.tuple(fc.double({ min: -30, max: 30, noNaN: true }), fc.integer({ min: 2, max: 40 })),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
  })
  .map(({ count, waves }): Ring<PxPoint> =>
    Array.from({ length: count }, (_, n) => {
      const angle = (2 * Math.PI * n) / count
      const far = 250 + waves.reduce((sum, [height, turns]) => sum + height * Math.cos(turns * angle), 0)
      return pxPoint(500 + 1.5 * far * Math.cos(angle), 400 + far * Math.sin(angle))
    }),
  )
const place = fc
  .tuple(fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: 0, max: 800, noNaN: true }))
  .map(([x, y]) => pxPoint(x, y))
const radius = fc.double({ min: 5, max: 300, noNaN: true })
/** A camera that looks at the slab aslant: the far end has fewer pixels to the mm. */
const toSlab = ([x, y]: PxPoint) => {
  const far = 1 - y / 2000
  return slabPoint((2 * (x - 500)) / far, (2.5 * y) / far)
}

/** Area by counting fine squares, as no ring function of the program does it. */
function countedAreaMm2(ring: Ring<PxPoint>): number {
  const onSlab = ring.map(toSlab)
  const left = Math.min(...onSlab.map(([x]) => x))
  const top = Math.min(...onSlab.map(([, y]) => y))
  const shifted = onSlab.map(([x, y]): readonly [number, number] => [x - left, y - top])
  const wide = Math.ceil(Math.max(...shifted.map(([x]) => x)))
  const high = Math.ceil(Math.max(...shifted.map(([, y]) => y)))
  return fillRing(shifted, wide, high, 1).reduce((sum, value) => sum + value, 0)
}

describe('mending an outline', () => {
  it('TRC-12 pushing by any stroke of any tool never crosses the line, and leaves what it does not touch', () => {
    fc.assert(
      fc.property(outline, place, place, radius, (ring, fromPx, toPx, radiusPx) => {
        const pushed = pushedRing(ring, { fromPx, toPx, radiusPx })
        expect(ringSelfCrossing(pushed)).toBeNull()
        const stroke = [fromPx, toPx]
        const left = new Set(pushed)
        const untouched = ring.filter((at) => pointToRingDistanceMm(at, stroke) > radiusPx)
        expect(untouched.every((at) => left.has(at))).toBe(true)
      }),
      RUNS,
    )
  })

  it('TRC-12 many small pushes one after the other never cross the line', () => {
    fc.assert(
      fc.property(outline, fc.array(place, { minLength: 4, maxLength: 7 }), radius, (ring, way, radiusPx) => {
        let pushed = ring
        for (const [n, toPx] of way.entries()) {
          pushed = pushedRing(pushed, { fromPx: way[n - 1] ?? toPx, toPx, radiusPx })
          expect(ringSelfCrossing(pushed)).toBeNull()
        }
        expect(pushed.length).toBeLessThan(20_000)
      }),
      { seed: SEED, numRuns: 8 },
    )
  })

  it('TRC-12 smoothing, straightening and redrawing give a ring that does not cross itself, or say so', () => {
    fc.assert(
      fc.property(
        outline,
        place,
        place,
        radius,
        fc.array(place, { maxLength: 4 }),
        (ring, a, b, size, inner) => {
          const mended = [
            smoothedStretch(ring, a, b, size / 4),
            straightenedStretch(ring, a, b),
            redrawnStretch(ring, [a, ...inner, b]),
          ]
          for (const result of mended) {
            if (result.ok) expect(ringSelfCrossing(result.value)).toBeNull()
            else expect(result.problem.code).toMatch(/^ring-/)
          }
        },
      ),
      RUNS,
    )
  })

  it('TRC-13 thinning keeps to its tolerance on the slab, and says the change of area that counting finds', () => {
    fc.assert(
      fc.property(outline, fc.double({ min: 0, max: 40, noNaN: true }), (ring, toleranceMm) => {
        const thin = thinnedRing(ring, toleranceMm, toSlab)
        expect(ringSelfCrossing(thin.ringPx)).toBeNull()
        expect(thin.toleranceMm).toBeLessThanOrEqual(toleranceMm)
        const onSlab = thin.ringPx.map(toSlab)
        const farthestMm = Math.max(...ring.map((at) => pointToRingDistanceMm(toSlab(at), onSlab)))
        expect(farthestMm).toBeLessThanOrEqual(thin.toleranceMm + 1e-9)
        const counted = countedAreaMm2(thin.ringPx) - countedAreaMm2(ring)
        // Counting is off by a part of a square for each square that a line crosses.
        const blurMm2 = 4 * Math.sqrt(4 * 4000)
        expect(Math.abs(thin.area.changeMm2 - counted)).toBeLessThan(blurMm2)
      }),
      { seed: SEED, numRuns: 15 },
    )
  })

  it('TRC-13 the change of area of any mending is what counting finds, with its sign', () => {
    fc.assert(
      fc.property(outline, place, place, radius, (ring, fromPx, toPx, radiusPx) => {
        const pushed = pushedRing(ring, { fromPx, toPx, radiusPx })
        const counted = countedAreaMm2(pushed) - countedAreaMm2(ring)
        const { beforeMm2, afterMm2, changeMm2 } = areaChange(ring, pushed, toSlab)
        expect(changeMm2).toBe(afterMm2 - beforeMm2)
        expect(Math.abs(changeMm2 - counted)).toBeLessThan(4 * Math.sqrt(4 * 4000))
      }),
      { seed: SEED, numRuns: 15 },
    )
  })

  it('the counting would tell a wrong area: an outline a hundredth larger is found out', () => {
    const ring = Array.from({ length: 90 }, (_, n) =>
      pxPoint(500 + 300 * Math.cos((n * Math.PI) / 45), 400 + 250 * Math.sin((n * Math.PI) / 45)),
    )
    const { beforeMm2 } = areaChange(ring, ring, toSlab)
    expect(Math.abs(1.01 * beforeMm2 - countedAreaMm2(ring))).toBeGreaterThan(4 * Math.sqrt(4 * 4000))
  })
})
