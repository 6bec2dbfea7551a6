import { describe, expect, it } from 'vitest'
import { randomSlab } from '../../../tests/support/randomSlab'
import { intersectRegions, regionsAreaMm2, slabPoint } from '../geometry'
import { clipToBox } from './clipToBox'

const box = { minX: -300, minY: -250, maxX: 700, maxY: 200 }
const boxRegion = {
  outer: [slabPoint(-300, -250), slabPoint(700, -250), slabPoint(700, 200), slabPoint(-300, 200)],
  holes: [],
}

describe('clipToBox', () => {
  it('CUT-1 agrees with the clipping kernel on a hundred random slabs', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const { outer, holes } = randomSlab(seed)
      const slab = [{ outer, holes }]
      const kernel = regionsAreaMm2(intersectRegions(slab, [boxRegion]))
      expect(Math.abs(regionsAreaMm2(clipToBox(slab, box)) - kernel)).toBeLessThan(3)
    }
  })

  it('CUT-2 leaves a face inside the box as it is, and drops one that lies outside', () => {
    expect(clipToBox([boxRegion], box)).toEqual([boxRegion])
    expect(clipToBox([boxRegion], { minX: 700, minY: 0, maxX: 800, maxY: 100 })).toEqual([])
  })
})
