import { describe, expect, it } from 'vitest'
import { type Region, ringPerimeterMm, tablePoint, type TablePoint } from '../geometry'
import { formSides, woodEdgeMm } from './formSides'
import type { Gap } from './gaps'
import { sidesReached } from './sidesReached'
import type { SideChoices, SideFinish } from './tableSides'

const box = (minX: number, minY: number, maxX: number, maxY: number): Region<TablePoint> => ({
  outer: [tablePoint(minX, minY), tablePoint(maxX, minY), tablePoint(maxX, maxY), tablePoint(minX, maxY)],
  holes: [],
})
const gap = (region: Region<TablePoint>, kind: Gap['kind'] = 'edge'): Gap => ({
  kind,
  region,
  areaMm2: 1,
  depthMm: null,
})
const blank = box(-5, -5, 2005, 905).outer
const sides = (far: SideFinish): SideChoices => {
  const side = (finish: SideFinish) => ({ finish, oversizeMm: 5 })
  return { start: side('sawn'), end: side('sawn'), far: side(far), near: side('filled') }
}

describe('formSides', () => {
  it('LAY-42 stands along each side on which a gap opens, as long as the blank', () => {
    const gaps = [gap(box(200, -5, 1500, 40)), gap(box(1900, 700, 2005, 905))]
    expect(formSides(gaps, blank, sides('filled'))).toEqual([
      { side: 'end', lengthMm: 910 },
      { side: 'far', lengthMm: 2010 },
      { side: 'near', lengthMm: 2010 },
    ])
  })

  it('LAY-42 stands along no kept edge, and nowhere for a hole or a joint within the wood', () => {
    expect(formSides([gap(box(200, -5, 1500, 40))], blank, sides('live'))).toEqual([])
    expect(formSides([gap(box(200, -5, 300, 40), 'void')], blank, sides('filled'))).toEqual([])
    expect(formSides([gap(box(200, 300, 1500, 340))], blank, sides('filled'))).toEqual([])
  })

  it('LAY-42 finds all sides that a gap comes to', () => {
    const rim = { minX: -5, minY: -5, maxX: 2005, maxY: 905 }
    expect(sidesReached(box(-5, 100, 2005, 905), rim)).toEqual(['start', 'end', 'near'])
    expect(sidesReached(box(10, 10, 20, 20), rim)).toEqual([])
  })
})

describe('woodEdgeMm', () => {
  it('LAY-43 leaves out what lies on the rim (by hand)', () => {
    // 300 × 45 mm at the far side: two ends and one long side are wood.
    expect(woodEdgeMm(box(200, -5, 500, 40), blank)).toBe(45 + 300 + 45)
    // In the corner: one long side and one end.
    expect(woodEdgeMm(box(-5, -5, 295, 40), blank)).toBe(300 + 45)
  })

  it('LAY-43 is the whole edge of a hole, with the wood that lies in it', () => {
    const hole = box(200, 300, 500, 400)
    const withPost = { ...hole, holes: [box(250, 330, 270, 350).outer.toReversed()] }
    expect(woodEdgeMm(hole, blank)).toBe(ringPerimeterMm(hole.outer))
    expect(woodEdgeMm(withPost, blank)).toBe(800 + 80)
  })
})
