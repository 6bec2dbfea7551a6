import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatSlab } from '../../../tests/support/flatPlan'
import { slabPoint } from '../geometry'
import { computePlan } from './computePlan'
import { crossedCuts } from './crossedCuts'
import type { Option } from './schema'

const line = (id: string, from: readonly [number, number], to: readonly [number, number], kerfMm = 3) => ({
  kind: 'line' as const,
  id,
  pieceId: 'strip',
  from: slabPoint(...from),
  to: slabPoint(...to),
  kerfMm,
  wasteSide: 'right' as const,
})

/** The flat slab (−200…2000 × −150…750) under a table that leaves a strip from y = 603 to 750 free. */
function codesWith(cuts: Option['cuts']): readonly string[] {
  const laid = flatOption(2200, 600, { xMm: -200, yMm: 0 })
  const sides = (['far', 'near'] as const).map((side) => ({
    kind: 'footprint' as const,
    id: side,
    side,
    kerfMm: 3,
  }))
  const option: Option = {
    ...laid,
    cuts: [...sides, ...cuts],
    pieces: [{ id: 'strip', name: 'Strip', slabId: 'slab', anchor: slabPoint(500, 650) }],
  }
  return computePlan(flatPlan(flatSlab(), option)).issues.map(({ code }) => code)
}

describe('crossedCuts', () => {
  it('CUT-9 reports lines through one piece that are drawn across each other, not those that meet at an end', () => {
    const across = line('a', [800, 600], [800, 760])
    expect(crossedCuts([across, line('b', [600, 650], [1000, 700])])).toEqual([
      { earlierId: 'a', laterId: 'b' },
    ])
    expect(crossedCuts([across, line('b', [600, 650], [800, 700])])).toEqual([])
    expect(crossedCuts([across, { ...line('b', [600, 650], [1000, 700]), pieceId: 'other' }])).toEqual([])
  })

  it('CUT-9 says so in the plan, as well as a cut that misses and a kerf that takes all beyond it', () => {
    const across = line('a', [800, 600], [800, 760])
    expect(codesWith([across])).not.toContain('cuts-cross')
    expect(codesWith([across, line('b', [600, 700], [1000, 700])])).toContain('cuts-cross')
    expect(codesWith([line('a', [0, 900], [900, 900])])).toContain('cut-misses-piece')
    // Walked to the right along y = 740, the waste below is 10 mm wide: a kerf of 12 mm leaves none of it.
    expect(codesWith([line('a', [-300, 740], [2100, 740], 12)])).toContain('cut-kerf-takes-all')
    expect(codesWith([line('a', [-300, 740], [2100, 740], 4)])).not.toContain('cut-kerf-takes-all')
  })
})
