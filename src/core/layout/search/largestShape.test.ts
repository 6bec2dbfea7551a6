import { describe, expect, it } from 'vitest'
import { woodOf } from '../../../../tests/support/coverCertificates'
import { isOnWood, shrunkInPlace, slabRegions, tableRing } from '../../../../tests/support/coverReference'
import {
  type Region,
  type Ring,
  ringAreaMm2,
  ringBounds,
  slabPoint,
  type SlabPoint,
  type TablePoint,
  tablePoint,
} from '../../geometry'
import { InvariantError } from '../../units'
import { finishedRing } from '../finishedRing'
import { boatRing } from './boatRing'
import { largestShape, type LargestShapeTask } from './largestShape'
import { searchWood, type SearchWood } from './searchWood'
import { viewpoint } from './viewpoint'

function woodFrom(...regions: readonly Region<SlabPoint>[]): SearchWood {
  const wood = searchWood(regions)
  if (!wood.ok) throw new Error(wood.problem.code)
  return wood.value
}

/** A board turned by 0.37 and moved, so that nothing lies along the axes. */
const board = (lengthMm: number, widthMm: number): Region<SlabPoint> => ({
  outer: tableRing(lengthMm, widthMm).map(([x, y]) =>
    slabPoint(300 + Math.cos(0.37) * x - Math.sin(0.37) * y, Math.sin(0.37) * x + Math.cos(0.37) * y - 120),
  ),
  holes: [],
})

function solved(task: Pick<LargestShapeTask, 'wood' | 'outline'> & Partial<LargestShapeTask>) {
  const search = largestShape({ growth: 'factor', grain: null, tolerance: 0.001, ...task })
  if (!search.ok) throw new Error(search.problem.code)
  const state = search.value.step(150_000)
  if (state.incumbent === null) throw new Error('nothing found')
  return { ...state, ...state.incumbent }
}

const L_SHAPE: Ring<TablePoint> = [
  [0, 0],
  [1500, 0],
  [1500, 500],
  [600, 500],
  [600, 1200],
  [0, 1200],
].map(([x = 0, y = 0]) => tablePoint(x, y))

describe('largestShape by a factor', () => {
  it('LAY-17 finds the oval and the rectangle that touch all sides of a board', () => {
    const wood = woodFrom(board(2000, 800))
    const rectangle = solved({ wood, outline: tableRing(1000, 400) })
    expect(rectangle.growth).toBeGreaterThan(1.999)
    expect(rectangle.bound).toBeLessThan(2.002)
    // Half as wide as long: the board's width decides, whatever its length.
    const oval = solved({ wood, outline: finishedRing({ kind: 'oval', lengthMm: 1000, widthMm: 500 }) })
    expect(Math.abs(oval.growth - 1.6)).toBeLessThan(0.0016)
  })

  it('LAY-17 lays every kind of outline wholly on the wood', () => {
    const { slab, wood } = woodOf(4)
    const outlines = [
      finishedRing({ kind: 'rounded', lengthMm: 1800, widthMm: 700, cornerRadiusMm: 80 }),
      boatRing(2000, 800, 500),
      boatRing(1800, 700, 0),
      finishedRing({ kind: 'oval', lengthMm: 900, widthMm: 900 }),
    ]
    for (const outline of outlines) {
      const { growth, pose, bound, isDone } = solved({ wood, outline })
      expect(isDone && bound - growth <= 0.001).toBe(true)
      const smaller = shrunkInPlace(outline, growth, pose, 1e-6)
      expect(isOnWood(slabRegions(slab), smaller.outline, smaller.pose)).toBe(true)
      expect(Math.abs(pose.angleRad)).toBeLessThanOrEqual(Math.PI / 2)
    }
  })

  it('LAY-17 lays an outline with inward corners, seen from one place, back into its own hole', () => {
    const cut = L_SHAPE.map(([x, y]) => slabPoint(1.3 * (0.8 * x - 0.6 * y), 1.3 * (0.6 * x + 0.8 * y)))
    const wood = woodFrom({ outer: cut, holes: [] })
    const { growth, bound, pose } = solved({ wood, outline: L_SHAPE })
    expect(growth).toBeGreaterThan(1.2985)
    expect(bound).toBeLessThan(1.302)
    expect(pose.angleRad).toBeCloseTo(Math.atan2(0.6, 0.8), 2)
  })

  it('LAY-17 goes round a void', () => {
    const whole = board(2000, 800)
    const hole = tableRing(60, 60).map(([x, y]) => slabPoint(900 + x, 300 + y))
    const pierced = woodFrom({ ...whole, holes: [[...hole].reverse()] })
    const { growth, pose } = solved({ wood: pierced, outline: tableRing(1000, 400) })
    expect(growth).toBeLessThan(1.5)
    const smaller = shrunkInPlace(tableRing(1000, 400), growth, pose, 1e-6)
    expect(isOnWood(pierced.regions, smaller.outline, smaller.pose)).toBe(true)
  })

  it('LAY-17 does not turn a disc, and stops as soon as a goal is settled', () => {
    const wood = woodFrom(board(2000, 800))
    const disc = finishedRing({ kind: 'oval', lengthMm: 400, widthMm: 400 })
    const full = solved({ wood, outline: disc })
    expect(Math.abs(full.growth - 2)).toBeLessThan(0.002)
    expect(full.pose.angleRad).toBeCloseTo(0, 6)
    const outline = tableRing(1000, 400)
    expect(solved({ wood, outline, goal: 1.5 }).evaluations).toBeLessThan(
      solved({ wood, outline }).evaluations,
    )
    expect(solved({ wood, outline, goal: 2.1 }).bound).toBeLessThan(2.1)
  })
})

describe('largestShape by a margin', () => {
  it('LAY-18 tells what there is to spare all round, and by how much a table does not fit', () => {
    const wood = woodFrom(board(2000, 800))
    const task = { wood, growth: 'margin', tolerance: 0.5 } as const
    // (2000 − 1900)/2 along, (800 − 740)/2 across: the sides decide.
    expect(Math.abs(solved({ ...task, outline: tableRing(1900, 740) }).growth - 30)).toBeLessThan(0.5)
    expect(Math.abs(solved({ ...task, outline: tableRing(2024, 700) }).growth + 12)).toBeLessThan(0.5)
  })

  it('LAY-18 has a margin of nothing or more exactly where the table fits', () => {
    const { slab, wood } = woodOf(2)
    const { growth, pose } = solved({ wood, outline: tableRing(1000, 400), growth: 'margin', tolerance: 1 })
    expect(growth).toBeGreaterThan(0)
    const grown = tableRing(1000 + 2 * growth - 0.02, 400 + 2 * growth - 0.02)
    const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
    const out = growth - 0.01
    const at = { ...pose, xMm: pose.xMm - out * (cos - sin), yMm: pose.yMm - out * (sin + cos) }
    expect(isOnWood(slabRegions(slab), grown, at)).toBe(true)
  })

  it('LAY-18 has no even margin round inward corners, and says so', () => {
    const search = largestShape({
      wood: woodFrom(board(2000, 800)),
      outline: L_SHAPE,
      growth: 'margin',
      grain: null,
      tolerance: 1,
    })
    expect(search).toEqual({ ok: false, problem: { code: 'cover-outline-not-convex', values: {} } })
  })
})

describe('outlines', () => {
  it('LAY-17 refuses a U, of which no place sees all', () => {
    const u = [
      [0, 0],
      [900, 0],
      [900, 600],
      [700, 600],
      [700, 200],
      [200, 200],
      [200, 600],
      [0, 600],
    ].map(([x = 0, y = 0]) => tablePoint(x, y))
    expect(viewpoint(u)).toBeNull()
    const search = largestShape({
      wood: woodFrom(board(2000, 800)),
      outline: u,
      growth: 'factor',
      grain: null,
      tolerance: 1,
    })
    expect(search).toEqual({ ok: false, problem: { code: 'cover-outline-hidden', values: {} } })
    // Of an L the corner square sees all; its middle is as far from every side as may be.
    const seen = viewpoint(L_SHAPE)
    expect(seen?.distanceMm).toBeCloseTo(250, 3)
  })

  it('LAY-17 draws a boat between two arcs', () => {
    const boat = boatRing(2000, 900, 600)
    expect(ringBounds(boat)).toEqual({
      minX: 0,
      minY: expect.closeTo(0, 6),
      maxX: 2000,
      maxY: expect.closeTo(900, 6),
    })
    // Chord 2000, rise 150: radius (1000² + 150²)/300; segment area r²·asin(c/2r) − c/2·(r − h).
    const r = (1000 ** 2 + 150 ** 2) / 300
    const segment = r * r * Math.asin(1000 / r) - 1000 * (r - 150)
    expect(Math.abs(ringAreaMm2(boat) - 2000 * 600 - 2 * segment)).toBeLessThan(2 * 2000 * 0.05)
    expect(() => boatRing(2000, 600, 600)).toThrow(InvariantError)
  })
})
