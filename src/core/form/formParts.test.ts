import { describe, expect, it } from 'vitest'
import { tablePoint } from '../geometry'
import { baseJoints, wetAcrossMm } from './baseJoints'
import { formParts, type FormRequest, voidDams } from './formParts'

const REQUEST: FormRequest = {
  innerLengthMm: 2010,
  innerWidthMm: 910,
  stripSides: ['start', 'end', 'far', 'near'],
  castMm: 50,
  aboveMm: 25,
  boardMm: 18,
  beyondMm: 40,
  backingMm: 150,
  screwEveryMm: 150,
  sheet: [2440, 1220],
  wetAtMm: () => 0,
  resinKgPerM3: 1100,
}

describe('the parts of a form', () => {
  it('FORM-1 FORM-2 are a base and four strips, the long ones past the short ones (by hand)', () => {
    const { parts, sideHeightMm } = formParts(REQUEST)
    expect(sideHeightMm).toBe(75)
    expect(parts.map(({ name, lengthMm, widthMm }) => [name, lengthMm, widthMm])).toEqual([
      ['base 1', 2126, 1026],
      ['side start', 910, 75],
      ['side end', 910, 75],
      ['side far', 2046, 75],
      ['side near', 2046, 75],
    ])
  })

  it('FORM-2 have no strip along a live edge, and no corner there', () => {
    const open = formParts({ ...REQUEST, stripSides: ['start', 'end', 'near'] })
    expect(open.parts.filter(({ kind }) => kind === 'side')).toHaveLength(3)
    expect(open.baseWidthMm).toBe(910 + 18 + 80)
    // 2 · 910 + 2010 along the base, two corners of 75.
    expect(open.caulkMm).toBe(3980)
  })

  it('FORM-3 are joined with backing where the base is longer than the sheet, and strips too', () => {
    const long = formParts({ ...REQUEST, innerLengthMm: 3000 })
    expect(long.base.jointsMm).toHaveLength(1)
    expect(long.parts.filter(({ kind }) => kind === 'base')).toHaveLength(2)
    expect(long.parts.filter(({ kind }) => kind === 'backing').map(({ name }) => name)).toEqual([
      'backing 1',
      'backing far',
      'backing near',
    ])
    expect(long.stripJointsMm).toEqual({ far: [1518], near: [1518] })
    expect(long.jointTapeMm).toBe(910)
    for (const { kind, lengthMm } of long.parts)
      if (kind === 'base') expect(lengthMm).toBeLessThanOrEqual(2440)
  })

  it('FORM-4 screws: every 150 mm and at both ends of each strip, two in each corner (by hand)', () => {
    // 910/150 → 7 + 1, twice; 2046/150 → 14 + 1, twice; four corners of two.
    expect(formParts(REQUEST).screws).toBe(2 * 8 + 2 * 15 + 8)
  })

  it('FORM-8 a hole where no strip stands gets a plate beneath and dams above and below', () => {
    const { parts, caulkMm } = voidDams([{ name: 'Knot', lengthMm: 120, widthMm: 80, edgeMm: 330 }])
    expect(parts).toEqual([{ kind: 'plate', side: null, name: 'Knot', lengthMm: 220, widthMm: 180 }])
    expect(caulkMm).toBe(660)
  })
})

describe('joints of the base', () => {
  const sheet = [2440, 1220] as const

  it('FORM-3 lie where no resin is, as near to the middle as may be', () => {
    const wetAtMm = (x: number): number => (x > 1200 && x < 1900 ? 300 : 0)
    expect(baseJoints({ lengthMm: 3000, widthMm: 1000, sheet, wetAtMm }).jointsMm).toEqual([1200])
    expect(baseJoints({ lengthMm: 3000, widthMm: 1000, sheet, wetAtMm: () => 5 }).jointsMm).toEqual([1500])
  })

  it('FORM-3 never leave a panel that no sheet holds, however wet it is elsewhere', () => {
    const wetAtMm = (x: number): number => (x > 500 && x < 2500 ? 300 : 0)
    const [joint = 0] = baseJoints({ lengthMm: 3000, widthMm: 1000, sheet, wetAtMm }).jointsMm
    expect(joint).toBeGreaterThanOrEqual(560)
    expect(joint).toBeLessThanOrEqual(2440)
  })

  it('FORM-3 turn the sheets where that takes fewer panels', () => {
    // 2300 long and 1500 wide: two sheets side by side across, joined along their long sides.
    const { jointsMm, lengthwiseMm } = baseJoints({ lengthMm: 2300, widthMm: 1500, sheet, wetAtMm: () => 0 })
    expect(jointsMm.length + lengthwiseMm.length).toBe(1)
    expect(baseJoints({ lengthMm: 2300, widthMm: 1100, sheet, wetAtMm: () => 0 }).jointsMm).toEqual([])
    expect(() => baseJoints({ lengthMm: 0, widthMm: 1, sheet, wetAtMm: () => 0 })).toThrow('size')
  })

  it('FORM-3 know how much resin a line crosses, holes left out', () => {
    const box = (x: number, y: number, w: number, h: number) => [
      tablePoint(x, y),
      tablePoint(x + w, y),
      tablePoint(x + w, y + h),
      tablePoint(x, y + h),
    ]
    const region = { outer: box(0, 0, 1000, 200), holes: [box(400, 50, 100, 80).toReversed()] }
    expect(wetAcrossMm([region], 100)).toBe(200)
    expect(wetAcrossMm([region], 450)).toBe(120)
    expect(wetAcrossMm([region], 1200)).toBe(0)
  })
})
