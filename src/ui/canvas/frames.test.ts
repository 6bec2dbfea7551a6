import { describe, expect, it } from 'vitest'
import { flatPlan } from '../../../tests/support/flatPlan'
import { computePlan, type SlabScaleResult } from '../../core/plan'
import { type Point, pxPoint, slabPoint, tablePoint } from '../../core/geometry'
import { framesOf, steppedPath, worldPath } from './frames'

const plan = flatPlan()
const pose = { xMm: 300, yMm: 100, angleRad: Math.PI / 2, turnedOver: false }

function flatScale(): SlabScaleResult {
  const scale = computePlan(plan).slabs.get('slab')?.scale
  if (scale?.state !== 'ready') throw new Error('the flat plan has no scale')
  return scale.value
}

function expectNear(found: Point | null, expected: Point, digits = 2): void {
  expect(found?.[0]).toBeCloseTo(expected[0], digits)
  expect(found?.[1]).toBeCloseTo(expected[1], digits)
}

describe('framesOf', () => {
  // In the flat photo 1 px is 1 mm, and the datum starts at pixel (500, 500).
  it('reads the photo’s world as pixels, and finds the slab under it', () => {
    const frames = framesOf('photo', flatScale(), pose)
    expectNear(frames.pxFromWorld([700, 620]), [700, 620])
    expectNear(frames.slabFromWorld([700, 620]), [200, 120])
    expectNear(frames.worldFromSlab(slabPoint(200, 120)), [700, 620])
    expect(frames.isBowed).toBe(true)
  })

  it('reads the world from above as slab millimetres, and finds the photo under it', () => {
    const frames = framesOf('above', flatScale(), pose)
    expectNear(frames.slabFromWorld([200, 120]), [200, 120], 9)
    expectNear(frames.pxFromWorld([200, 120]), [700, 620])
    expectNear(frames.worldFromPx(pxPoint(700, 620)), [200, 120])
  })

  it('goes through the pose of the table in every view', () => {
    // by hand: a quarter turn takes the table's (50, 20) to (−20, 50), and the shift to (280, 150)
    const above = framesOf('above', flatScale(), pose)
    expectNear(above.worldFromTable(tablePoint(50, 20)), [280, 150], 9)
    expectNear(above.tableFromWorld([280, 150]), [50, 20], 9)
    const table = framesOf('table', flatScale(), pose)
    expectNear(table.worldFromSlab(slabPoint(280, 150)), [50, 20], 9)
    expectNear(table.slabFromWorld([50, 20]), [280, 150], 9)
    expectNear(framesOf('photo', flatScale(), pose).worldFromTable(tablePoint(50, 20)), [780, 650])
  })

  it('has no answer without a scale, without a table, or for a photo seen from the table', () => {
    const photo = framesOf('photo', null, null)
    expect(photo.slabFromWorld([1, 1])).toBeNull()
    expect(photo.worldFromSlab(slabPoint(1, 1))).toBeNull()
    expect(photo.tableFromWorld([1, 1])).toBeNull()
    expect(framesOf('above', null, null).pxFromWorld([1, 1])).toBeNull()
    expect(framesOf('table', flatScale(), null).worldFromSlab(slabPoint(1, 1))).toBeNull()
    expect(framesOf('table', flatScale(), pose).pxFromWorld([1, 1])).toBeNull()
  })
})

describe('paths', () => {
  it('has none when part of it lies beyond the horizon', () => {
    expect(worldPath([1, 2, 3], (n) => (n === 2 ? null : [n, n]))).toBeNull()
    expect(worldPath([1, 2], (n) => [n, n])).toEqual([
      [1, 1],
      [2, 2],
    ])
  })

  it('puts points in between, at most 100 mm apart, and closes the ring', () => {
    const square = [slabPoint(0, 0), slabPoint(250, 0), slabPoint(250, 90)]
    const open = steppedPath(square, false, slabPoint)
    expect(open.map(([x]) => x)).toEqual([0, 250 / 3, 500 / 3, 250, 250].map((x) => expect.closeTo(x, 9)))
    const closed = steppedPath(square, true, slabPoint)
    expect(closed).toHaveLength(3 + 1 + 3)
    expect(closed[0]).toEqual([0, 0])
  })
})
