import { describe, expect, it } from 'vitest'
import { sizeOf, woodOf } from '../../../../tests/support/coverCertificates'
import { offWoodMm2, slabRegions, tableRing } from '../../../../tests/support/coverReference'
import { type Region, slabPoint, type SlabPoint } from '../../geometry'
import { keptTable } from './keptTable'
import { searchWood, type SearchWood } from './searchWood'

function woodFrom(...regions: readonly Region<SlabPoint>[]): SearchWood {
  const wood = searchWood(regions)
  if (!wood.ok) throw new Error(wood.problem.code)
  return wood.value
}

/** 2400 long; 500 wide at the start, 900 at the end, both edges slanting alike. */
const TAPER: Region<SlabPoint> = {
  outer: [slabPoint(0, 200), slabPoint(2400, 0), slabPoint(2400, 900), slabPoint(0, 700)],
  holes: [],
}

describe('keptTable', () => {
  it('LAY-19 with both edges kept is as long as crosscuts are wide enough', () => {
    const search = keptTable({
      wood: woodFrom(TAPER),
      keep: 'both',
      leastWidthMm: 600,
      grain: { directionRad: 0, withinRad: 0.001 },
      toleranceMm: 5,
    })
    const { incumbent, bound } = search.step(Infinity)
    // Width 500 + x/6 reaches 600 at x = 600: 1800 long, on average 750 wide.
    expect(Math.abs((incumbent?.lengthMm ?? 0) - 1800)).toBeLessThan(5)
    expect(bound).toBeLessThan(1812)
    expect(incumbent?.leastWidthMm).toBeGreaterThanOrEqual(600)
    expect(Math.abs((incumbent?.meanWidthMm ?? 0) - 750)).toBeLessThan(1)
    expect(incumbent?.liveSides).toEqual(['far', 'near'])
  })

  it('LAY-19 with both edges kept follows a bent slab, where no straight table would be as long', () => {
    const bend = Array.from({ length: 41 }, (_, k) => [k * 60, 300 * Math.sin((Math.PI * k) / 40)] as const)
    const banana: Region<SlabPoint> = {
      outer: [
        ...bend.map(([x, y]) => slabPoint(x, y)),
        ...bend.toReversed().map(([x, y]) => slabPoint(x, y + 700)),
      ],
      holes: [],
    }
    const task = { wood: woodFrom(banana), leastWidthMm: 600, grain: null, toleranceMm: 5 }
    const both = keptTable({ ...task, keep: 'both' }).step(Infinity)
    const one = keptTable({ ...task, keep: 'one' }).step(Infinity)
    expect(both.value).toBeGreaterThan(2300)
    expect(one.value).toBeLessThan(2000)
  })

  it('LAY-19 with one edge kept saws the other through whole wood, as far out as it goes', () => {
    const search = keptTable({
      wood: woodFrom(TAPER),
      keep: 'one',
      leastWidthMm: 500,
      grain: null,
      toleranceMm: 2,
    })
    const { incumbent } = search.step(Infinity)
    // Sawn along one edge, which slants by 1/12: the other is 500·cos away at the narrow end and widens from there.
    expect(incumbent?.liveSides).toHaveLength(1)
    expect(incumbent?.leastWidthMm).toBeGreaterThanOrEqual(499.9)
    expect(incumbent?.meanWidthMm).toBeGreaterThan(600)
  })

  it('LAY-19 takes no resin: the straight part of a table with one live edge lies on wood', () => {
    for (const seed of [1, 2, 5]) {
      const { slab, wood } = woodOf(seed)
      const filled = slabRegions({ ...slab, holes: [] })
      const widthMm = sizeOf(wood).widthMm * 0.7
      const { incumbent } = keptTable({
        wood,
        keep: 'one',
        leastWidthMm: widthMm,
        grain: null,
        toleranceMm: 5,
      }).step(Infinity)
      if (incumbent === null) throw new Error('nothing found')
      const { lengthMm, leastWidthMm, meanWidthMm, liveSides, pose } = incumbent
      expect(leastWidthMm).toBeGreaterThanOrEqual(widthMm - 0.1)
      expect(meanWidthMm).toBeGreaterThanOrEqual(leastWidthMm)
      // From the sawn side to the least width.
      const down = liveSides[0] === 'near' ? 0 : meanWidthMm - leastWidthMm
      const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
      const at = { ...pose, xMm: pose.xMm - down * sin, yMm: pose.yMm + down * cos }
      const core = tableRing(lengthMm, leastWidthMm)
      // Half-millimetre bins and 0.02 mm of tolerance along both sides.
      expect(offWoodMm2(filled, core, at)).toBeLessThan(0.06 * lengthMm + 5)
    }
  })

  it('LAY-19 finds nothing where no crosscut is wide enough', () => {
    const state = keptTable({
      wood: woodFrom(TAPER),
      keep: 'both',
      leastWidthMm: 2600,
      grain: null,
      toleranceMm: 5,
    }).step(Infinity)
    expect(state.incumbent).toBeNull()
    expect(state.isDone).toBe(true)
  })
})
