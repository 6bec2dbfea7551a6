import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomSlab } from '../../../tests/support/randomSlab'
import {
  applyIsometryToRegion,
  applyIsometryToRing,
  type Region,
  regionsAreaMm2,
  ringAreaMm2,
  ringBounds,
  ringCentroid,
  slabPoint,
  subtractRegions,
  type TablePoint,
  tablePoint,
} from '../geometry'
import { blankRing } from './blankRing'
import { type CoverageInput, coverageOf } from './coverage'
import { finishedRing, rectangleRing } from './finishedRing'
import { startingPose } from './startingPose'
import type { SideChoices, SideFinish } from './tableSides'
import { verdictOf } from './verdict'

const sidesOf = (
  finish: Partial<Record<keyof SideChoices, SideFinish>> = {},
  oversizeMm = 0,
): SideChoices => ({
  start: { finish: finish.start ?? 'sawn', oversizeMm },
  end: { finish: finish.end ?? 'sawn', oversizeMm },
  far: { finish: finish.far ?? 'filled', oversizeMm },
  near: { finish: finish.near ?? 'filled', oversizeMm },
})

const region = (outer: readonly TablePoint[]): Region<TablePoint> => ({ outer, holes: [] })
const box = (minX: number, minY: number, maxX: number, maxY: number): readonly TablePoint[] =>
  rectangleRing(minX, minY, maxX, maxY)

const TABLE = { kind: 'rectangle', lengthMm: 2000, widthMm: 900 } as const

function coverageOn(slab: readonly TablePoint[], sides: SideChoices, more: Partial<CoverageInput> = {}) {
  const finished = finishedRing(TABLE)
  const blank = blankRing(TABLE, sides, ringBounds(slab))
  const mainWood = [region(slab)]
  return coverageOf({ finished, blank, sides, mainWood, slabOutline: slab, voids: [], laid: [], ...more })
}

describe('coverage of a table that a board more than covers', () => {
  const slab = box(-30, -20, 2040, 950)

  it('LAY-4 tells what is to spare at the tightest side', () => {
    const coverage = coverageOn(slab, sidesOf())
    expect(coverage.spare?.distanceMm).toBe(20)
    const { onTable = [0, 0], onEdge = [0, 0] } = coverage.spare ?? {}
    expect([onTable[1], onEdge[1]]).toEqual([0, -20])
    expect(coverage.gaps).toEqual([])
    expect(verdictOf(coverage, sidesOf())).toEqual({ kind: 'covers', spareMm: 20 })
  })

  it('LAY-4 tells a tight corner from a tight side', () => {
    // An edge that falls off towards the start: the far corner there comes nearest to it, 21/√2 mm by hand.
    const cut = [
      tablePoint(-30, 9),
      tablePoint(9, -30),
      tablePoint(2040, -30),
      tablePoint(2040, 950),
      tablePoint(-30, 950),
    ]
    const spare = coverageOn(cut, sidesOf()).spare
    expect(spare?.distanceMm).toBeCloseTo(21 / Math.SQRT2, 6)
    expect([spare?.isAtCorner, spare?.onTable]).toEqual([true, [0, 0]])
    const bumped = [
      ...box(-30, -30, 2040, 950),
      tablePoint(-30, 450),
      tablePoint(-8, 440),
      tablePoint(-30, 430),
    ]
    expect(coverageOn(bumped, sidesOf()).spare?.isAtCorner).toBe(false)
  })

  it('LAY-2 counts a hole as a void with its own depth', () => {
    const voids = [{ ring: box(500, 300, 700, 400), depthMm: 15 }]
    const mainWood = subtractRegions([region(slab)], [region(box(500, 300, 700, 400))])
    const coverage = coverageOn(slab, sidesOf(), { voids, mainWood })
    expect(coverage.gaps.map(({ kind, areaMm2, depthMm }) => ({ kind, areaMm2, depthMm }))).toEqual([
      { kind: 'void', areaMm2: 20_000, depthMm: 15 },
    ])
    expect(verdictOf(coverage, sidesOf()).kind).toBe('covers-with-voids')
  })
})

describe('coverage of a table that runs past the wood', () => {
  // 40 mm short along the whole near side.
  const slab = box(-30, -20, 2040, 860)

  it('LAY-5 tells the side, how deep and how long', () => {
    const coverage = coverageOn(slab, sidesOf())
    expect(coverage.sideGaps).toMatchObject([{ side: 'near', greatestDepthMm: 40, lengthMm: 2000 }])
    const [onSide, onWood] = coverage.sideGaps[0]?.deepest ?? []
    expect([onSide?.[1], onWood?.[1]]).toEqual([900, 860])
    expect(coverage.spare).toBeNull()
    expect(verdictOf(coverage, sidesOf())).toMatchObject({
      kind: 'needs-fill',
      worstSide: 'near',
      depthMm: 40,
      edgeGapAreaMm2: 80_000,
    })
  })

  it('LAY-5 a sawn side that is short of wood is refused rather than filled', () => {
    const sides = sidesOf({ near: 'sawn' })
    expect(verdictOf(coverageOn(slab, sides), sides)).toEqual({
      kind: 'short',
      side: 'near',
      depthMm: 40,
      lengthMm: 2000,
    })
  })

  it('LAY-1 a piece laid into the gap takes its place, and LAY-8 wood on wood counts once and is reported', () => {
    const laid = [{ name: 'A', region: region(box(0, 850, 1000, 900)) }]
    const coverage = coverageOn(slab, sidesOf(), { laid })
    expect(coverage.laidAreaMm2).toBe(40_000)
    expect(regionsAreaMm2(coverage.gaps.map((gap) => gap.region))).toBe(40_000)
    expect(coverage.overlaps).toEqual([{ name: 'A', otherName: null, areaMm2: 10_000 }])
  })

  it('says so when there is no wood under the table', () => {
    const coverage = coverageOn(box(3000, 0, 4000, 900), sidesOf())
    expect(verdictOf(coverage, sidesOf())).toEqual({ kind: 'off-slab' })
  })
})

describe('a corner without wood where a sawn end meets a long side', () => {
  // The near edge falls from (300, 950) to (-30, 750): at x = 0 it is at 750 + 30 / 330 × 200 = 768.2, 131.8 short.
  const slab = [
    tablePoint(-30, -20),
    tablePoint(2040, -20),
    tablePoint(2040, 950),
    tablePoint(300, 950),
    tablePoint(-30, 750),
  ]

  it('LAY-27 belongs to the long side that is filled, all of it', () => {
    const coverage = coverageOn(slab, sidesOf())
    expect(coverage.sideGaps.map(({ side }) => side)).toEqual(['near'])
    // Read at columns of 5 mm: the edge falls 3 mm between two of them.
    expect(coverage.sideGaps[0]?.greatestDepthMm).toBeGreaterThan(131.8 - 3.1)
    expect(coverage.sideGaps[0]?.greatestDepthMm).toBeLessThan(131.9)
    // It opens on the near side up to x = -30 + (900 - 750) / 200 × 330 = 217.5.
    expect(coverage.sideGaps[0]?.lengthMm).toBeCloseTo(217.5, 6)
    expect(verdictOf(coverage, sidesOf())).toMatchObject({ kind: 'needs-fill', worstSide: 'near' })
  })

  it('LAY-27 is a place that is short when both sides are sawn', () => {
    const sides = sidesOf({ near: 'sawn' })
    expect(verdictOf(coverageOn(slab, sides), sides).kind).toBe('short')
  })

  it('LAY-27 does not excuse an end that stops short, nor one with wood along less than half of it', () => {
    const tooShort = box(40, -20, 2040, 860)
    expect(verdictOf(coverageOn(tooShort, sidesOf()), sidesOf())).toMatchObject({
      kind: 'short',
      side: 'start',
      depthMm: 40,
    })
    const pointed = [
      tablePoint(-30, -20),
      tablePoint(2040, -20),
      tablePoint(2040, 950),
      tablePoint(800, 950),
      tablePoint(-30, 300),
    ]
    expect(verdictOf(coverageOn(pointed, sidesOf()), sidesOf())).toMatchObject({
      kind: 'short',
      side: 'start',
    })
  })
})

describe('a side whose live edge is kept', () => {
  // The near edge runs from 820 at the start to 980 at the end.
  const slab = [tablePoint(-30, -20), tablePoint(2030, -20), tablePoint(2030, 982.4), tablePoint(-30, 817.6)]
  const sides = sidesOf({ near: 'live' }, 5)

  it('LAY-3 takes no resin outside the wood', () => {
    const coverage = coverageOn(slab, sides)
    expect(coverage.gaps).toEqual([])
    // Blank = wood where the edge is kept: 5 mm of oversize at both ends and the far side.
    const wood = (2010 * (820 - 0.4 + 980 + 0.4)) / 2 + 2010 * 5
    expect(coverage.blankAreaMm2).toBeCloseTo(wood, 0)
  })

  it('LAY-6 is judged by its least and mean width', () => {
    const [kept] = coverageOn(slab, sides).keptEdges
    expect(kept?.side).toBe('near')
    // Read 2.5 mm from the start, where the edge has widened by 2.5 × 160/2000.
    expect(kept?.leastWidthMm).toBeCloseTo(820.2, 6)
    expect(kept?.meanWidthMm).toBeCloseTo(900, 6)
    expect(kept?.leastAtMm).toBe(2.5)
  })

  it('LAY-6 measures between two live edges when both long sides are kept', () => {
    const both = sidesOf({ near: 'live', far: 'live' })
    expect(coverageOn(slab, both).keptEdges[0]?.leastWidthMm).toBeCloseTo(840.2, 6)
  })
})

describe('startingPose', () => {
  it('LAY-7 lies along the longest direction, over the middle', () => {
    const turned = applyIsometryToRing(
      { xMm: 400, yMm: -200, angleRad: 0.3, turnedOver: false },
      box(0, 0, 3000, 1000),
      slabPoint,
    )
    const table = { kind: 'rectangle', lengthMm: 2000, widthMm: 800 } as const
    const pose = startingPose(turned, table)
    expect(pose.angleRad).toBeCloseTo(0.3, 9)
    const laid = applyIsometryToRing(pose, finishedRing(table), slabPoint)
    expect(ringCentroid(laid)[0]).toBeCloseTo(ringCentroid(turned)[0], 6)
    expect(ringCentroid(laid)[1]).toBeCloseTo(ringCentroid(turned)[1], 6)
  })
})

describe('LAY-1 conservation', () => {
  it('LAY-1 wood + gaps = blank for random slabs, poses and finishes, each by its own route', () => {
    const finish = fc.constantFrom<SideFinish>('sawn', 'filled', 'live')
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.record({ start: finish, end: finish, far: finish, near: finish }),
        fc.record({
          xMm: fc.double({ min: -1500, max: 300, noNaN: true }),
          yMm: fc.double({ min: -600, max: 100, noNaN: true }),
          angleRad: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
          turnedOver: fc.boolean(),
        }),
        (seed, finishes, pose) => {
          const slab = randomSlab(seed)
          const wood = applyIsometryToRegion(pose, { outer: slab.outer, holes: slab.holes }, tablePoint)
          const sides = sidesOf(finishes, 6)
          const finished = finishedRing(TABLE)
          const blank = blankRing(TABLE, sides, ringBounds(wood.outer))
          const coverage = coverageOf({
            finished,
            blank,
            sides,
            mainWood: [wood],
            slabOutline: wood.outer,
            voids: wood.holes.map((hole) => ({ ring: [...hole].reverse(), depthMm: null })),
            laid: [],
          })
          const gaps = coverage.gaps.reduce((sum, gap) => sum + gap.areaMm2, 0)
          expect(Math.abs(coverage.mainAreaMm2 + gaps - coverage.blankAreaMm2)).toBeLessThan(5)
          expect(coverage.blankAreaMm2).toBeLessThanOrEqual(ringAreaMm2(blank) + 1)
        },
      ),
      { seed: 20_263, numRuns: 120 },
    )
  })
})
