import { describe, expect, it } from 'vitest'
import {
  applyIsometryToRegion,
  intersectRegions,
  regionsAreaMm2,
  slabPoint,
  tablePoint,
  type Region,
  type SlabPoint,
  type TablePoint,
} from '../geometry'
import { startingPlacement } from './startingPlacement'

/** A right triangle 600 by 100 in the slab frame, and the same triangle as a gap elsewhere, turned half round. */
const piece: Region<SlabPoint> = {
  outer: [slabPoint(50, 20), slabPoint(650, 20), slabPoint(50, 120)],
  holes: [],
}
const gap: Region<TablePoint> = {
  outer: [tablePoint(1600, 300), tablePoint(1000, 300), tablePoint(1600, 200)],
  holes: [],
}

describe('startingPlacement', () => {
  it('LAY-9 lays a piece that was cut out of a gap back into it, the right way round', () => {
    const laid = applyIsometryToRegion(startingPlacement(piece, gap), piece, tablePoint)
    // By hand: both triangles are 600 × 100 / 2 = 30 000 mm².
    expect(regionsAreaMm2(intersectRegions([laid], [gap]))).toBeCloseTo(30_000, 0)
  })

  it('LAY-9 moves it outwards until it lies on no wood and keeps the joint', () => {
    // A slot 40 deep along y = 0 above wood from y = 40 on; a piece 100 deep over its middle (y = 20) reaches to 70.
    const box = (minX: number, minY: number, maxX: number, maxY: number): Region<TablePoint> => ({
      outer: [tablePoint(minX, minY), tablePoint(maxX, minY), tablePoint(maxX, maxY), tablePoint(minX, maxY)],
      holes: [],
    })
    const strip: Region<SlabPoint> = {
      outer: [slabPoint(0, 0), slabPoint(600, 0), slabPoint(600, 100), slabPoint(0, 100)],
      holes: [],
    }
    const about = { wood: [box(0, 40, 2000, 900)], leastJointMm: 6 }
    const pose = startingPlacement(strip, box(200, 0, 1200, 40), about)
    const laid = applyIsometryToRegion(pose, strip, tablePoint)
    // By hand: its lower edge comes to 40 − 6 = 34.
    expect(Math.max(...laid.outer.map(([, y]) => y))).toBeCloseTo(34, 1)
  })

  it('LAY-9 never turns a piece over', () => {
    expect(startingPlacement(piece, gap).turnedOver).toBe(false)
  })

  it('LAY-9 brings the middle of the piece over the middle of the gap whatever their sizes', () => {
    const square: Region<SlabPoint> = {
      outer: [slabPoint(0, 0), slabPoint(10, 0), slabPoint(10, 10), slabPoint(0, 10)],
      holes: [],
    }
    const laid = applyIsometryToRegion(startingPlacement(square, gap), square, tablePoint)
    const xMm = laid.outer.reduce((sum, [x]) => sum + x, 0) / 4
    const yMm = laid.outer.reduce((sum, [, y]) => sum + y, 0) / 4
    // By hand: a triangle's centroid is the mean of its corners.
    expect(xMm).toBeCloseTo(1400, 6)
    expect(yMm).toBeCloseTo(266.6667, 3)
  })
})
