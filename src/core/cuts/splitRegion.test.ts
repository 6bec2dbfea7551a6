import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomSlab } from '../../../tests/support/randomSlab'
import { type Region, regionsAreaMm2, type SlabPoint, slabPoint, signedDistanceToLineMm } from '../geometry'
import type { Line } from './lineCrossings'
import { splitRegion } from './splitRegion'
import { splitRegionByKernel } from './splitRegionByKernel'

const ring = (...points: readonly (readonly [number, number])[]): SlabPoint[] =>
  points.map(([x, y]) => slabPoint(x, y))

const square: Region<SlabPoint> = { outer: ring([0, 0], [100, 0], [100, 100], [0, 100]), holes: [] }
const withHole: Region<SlabPoint> = { ...square, holes: [ring([40, 40], [40, 60], [60, 60], [60, 40])] }
const line = (fromX: number, fromY: number, toX: number, toY: number): Line<SlabPoint> => ({
  from: slabPoint(fromX, fromY),
  to: slabPoint(toX, toY),
})

describe('splitRegion', () => {
  it('CUT-1 halves a square', () => {
    const split = splitRegion(square, line(0, 30, 100, 30))
    expect(regionsAreaMm2(split.left)).toBe(3000)
    expect(regionsAreaMm2(split.right)).toBe(7000)
    expect(split.crossingsMm).toEqual([0, 100])
  })

  it('CUT-2 calls right what lies below a line walked to the right, since y is down', () => {
    const { right } = splitRegion(square, line(0, 30, 100, 30))
    expect(right.flatMap(({ outer }) => outer).every(([, y]) => y >= 30)).toBe(true)
  })

  it('CUT-1 opens a hole that the line crosses, and keeps one that it misses', () => {
    const through = splitRegion(withHole, line(0, 50, 100, 50))
    expect(through.left.map(({ holes }) => holes.length)).toEqual([0])
    expect(regionsAreaMm2(through.left)).toBe(5000 - 200)
    const beside = splitRegion(withHole, line(0, 20, 100, 20))
    expect(beside.right.map(({ holes }) => holes.length)).toEqual([1])
    expect(regionsAreaMm2(beside.right)).toBe(8000 - 400)
  })

  it('CUT-1 leaves a comb in as many parts as it has teeth', () => {
    const comb: Region<SlabPoint> = {
      outer: ring([0, 0], [50, 0], [50, 40], [40, 10], [30, 40], [20, 10], [10, 40], [0, 10]),
      holes: [],
    }
    const { left, right } = splitRegion(comb, line(-10, 20, 60, 20))
    expect(left).toHaveLength(1)
    expect(right).toHaveLength(3)
  })

  it('CUT-5 gives the whole back when the line misses it', () => {
    const missed = splitRegion(square, line(0, -1, 100, -1))
    expect(missed).toEqual({ left: [], right: [square], crossingsMm: [] })
  })

  it('CUT-1 splits along an edge, through a corner, and past a touching corner without losing area', () => {
    for (const cut of [
      line(0, 0, 100, 0),
      line(0, 0, 100, 100),
      line(-50, 50, 50, -50),
      line(100, 0, 100, 9),
    ]) {
      const { left, right } = splitRegion(square, cut)
      expect(regionsAreaMm2(left) + regionsAreaMm2(right)).toBeCloseTo(10_000, 6)
    }
  })

  it('CUT-1 and CUT-2 hold for random slabs, and the clipping kernel agrees', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        fc.double({ min: -300, max: 300, noNaN: true }),
        (seed, angle, shift) => {
          const { outer, holes } = randomSlab(seed)
          const slab: Region<SlabPoint> = { outer, holes }
          const middle = outer[Math.floor(outer.length / 4)] ?? slabPoint(0, 0)
          const [dx, dy] = [Math.cos(angle), Math.sin(angle)]
          const from = slabPoint(middle[0] - dy * shift, middle[1] + dx * shift)
          const cut = { from, to: slabPoint(from[0] + dx * 100, from[1] + dy * 100) }
          const { left, right } = splitRegion(slab, cut)
          const kernel = splitRegionByKernel(slab, cut)
          expect(regionsAreaMm2(left) + regionsAreaMm2(right)).toBeCloseTo(regionsAreaMm2([slab]), 3)
          // The kernel drops slivers below 1 mm² and rounds to its grid along some metres of edge.
          expect(Math.abs(regionsAreaMm2(left) - regionsAreaMm2(kernel.left))).toBeLessThan(3)
          expect(Math.abs(regionsAreaMm2(right) - regionsAreaMm2(kernel.right))).toBeLessThan(3)
          for (const [x, y] of right.flatMap((face) => face.outer)) {
            expect(signedDistanceToLineMm([x, y], cut.from, cut.to)).toBeGreaterThan(-1e-6)
          }
        },
      ),
      { seed: 20_261, numRuns: 150 },
    )
  })
})
