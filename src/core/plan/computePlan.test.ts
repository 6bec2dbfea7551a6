import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatPx, flatSlab } from '../../../tests/support/flatPlan'
import { computePlan } from './computePlan'
import type { Part } from './part'
import type { OptionResult, SlabResult } from './planResult'
import type { Option, Plan } from './schema'

function valueOf<T>(part: Part<T>): T {
  if (part.state !== 'ready') throw new Error(`part is ${JSON.stringify(part)}`)
  return part.value
}

function resultOf(plan: Plan): {
  readonly slab: SlabResult
  readonly option: OptionResult
  readonly codes: string[]
} {
  const result = computePlan(plan)
  const slab = result.slabs.get('slab')
  const option = result.options.get('option')
  if (slab === undefined || option === undefined) throw new Error('no result')
  return { slab, option, codes: result.issues.map(({ code }) => code) }
}

const withCuts = (option: Option, more: Partial<Option>): Option => ({ ...option, ...more })

describe('computePlan on a slab seen from straight above', () => {
  // Slab 2200 × 900 × 50 mm; table 2000 × 800 laid 100 mm in from the slab's start and 50 mm from its far edge.
  const { slab, option } = resultOf(flatPlan())

  it('takes the size from the taped distances', () => {
    const shape = valueOf(slab.shape)
    expect(shape.lengthMm).toBeCloseTo(2200, 3)
    expect(shape.widthMm).toBeCloseTo(900, 3)
    expect(shape.woodAreaMm2 / 1e6).toBeCloseTo(1.98, 6)
    const scale = valueOf(slab.scale)
    expect(scale.markPositions.map(({ name }) => name)).toEqual(['A', 'B', 'C', 'D'])
    expect(scale.pxPerMm).toBeCloseTo(1, 6)
    expect(scale.datum.lengthMm).toBeCloseTo(1800, 3)
  })

  it('covers the table and tells what is to spare', () => {
    expect(valueOf(option.verdict).kind).toBe('covers')
    expect(valueOf(option.coverage).spare?.distanceMm).toBeCloseTo(50, 3)
    expect(valueOf(option.resin).gapLitres).toBe(0)
  })

  it('PLN-5 shares the slab out between the table, what is left over and kerf', () => {
    const coverage = valueOf(option.coverage)
    expect(coverage.mainAreaMm2).toBeCloseTo(2000 * 800, 0)
    // Ends first: 2 crosscuts of 900 mm, then 2 rips of 2000 mm, 3 mm each.
    expect(coverage.kerfAreaMm2).toBeCloseTo(3 * (2 * 900 + 2 * 2000), 0)
    expect(coverage.leftOverAreaMm2).toBeCloseTo(1_980_000 - 1_600_000 - 3 * 5800, 0)
  })

  it('sets out its cuts from the datum, in order', () => {
    const { cuts } = valueOf(option.pieces)
    expect(cuts.map(({ number, side }) => [number, side])).toEqual([
      [1, 'start'],
      [2, 'end'],
      [3, 'far'],
      [4, 'near'],
    ])
    const far = cuts[2]
    expect(far?.from.alongMm).toBeCloseTo(-100, 3)
    expect(far?.from.offsetMm).toBeCloseTo(-100, 3)
    expect(far?.to.alongMm).toBeCloseTo(1900, 3)
    expect(far?.wasteSide).toBe('left')
    expect(cuts.map(({ yields }) => yields.length)).toEqual([1, 1, 1, 1])
  })

  it('names what falls off, the largest first', () => {
    const offcuts = valueOf(option.pieces).pieces.filter(({ use }) => use === 'offcut')
    // 2000 × 47 far, 2000 × 47 near, 900 × 97 at each end.
    expect(offcuts.map(({ name }) => name)).toEqual(['A', 'B', 'C', 'D'])
    expect(offcuts.map(({ areaMm2 }) => Math.round(areaMm2 / 100) * 100)).toEqual([
      94_000, 94_000, 87_300, 87_300,
    ])
  })
})

describe('computePlan where wood is short', () => {
  // 60 mm short along the near side: slab ends at y = 640 of the table's 700.
  const slab = flatSlab({ outline: flatBox(-200, -150, 2000, 640) })
  const short = flatOption(2000, 800, { xMm: -100, yMm: -100 })

  it('fills the gap with resin as deep as the slab', () => {
    const { option } = resultOf(flatPlan(slab, short))
    expect(valueOf(option.verdict)).toMatchObject({ kind: 'needs-fill', worstSide: 'near' })
    const resin = valueOf(option.resin)
    // 2000 × 60 × 50 mm = 6 L; 10 % loss; (2 · 1130 + 980) / 3 = 1080 kg/m³.
    expect(resin.gapLitres).toBeCloseTo(6, 4)
    expect(resin.mixLitres).toBeCloseTo(6.6, 4)
    expect(resin.mixKg).toBeCloseTo(7.128, 4)
  })

  it('CUT-8 lays an offcut into the gap by its name, and the resin follows', () => {
    // The far offcut is 2000 × 47 mm at y −150 … −103 on the slab; moved into the gap it covers 2000 × 47 of 2000 × 60.
    const laid = withCuts(short, {
      pieces: [{ id: 'strip', name: 'Strip', slabId: 'slab', anchor: [900, -125] as never }],
      placements: [
        {
          id: 'place',
          pieceId: 'strip',
          // Slab frame to table frame: the strip's far edge (y = −150) comes to lie at y = 740 of the table.
          pose: { xMm: 100, yMm: 740 + 150, angleRad: 0, turnedOver: false },
        },
      ],
    })
    const { option, codes } = resultOf(flatPlan(slab, laid))
    expect(codes).toEqual([])
    expect(valueOf(option.coverage).laidAreaMm2).toBeCloseTo(2000 * 47, 0)
    expect(valueOf(option.resin).gapLitres).toBeCloseTo((2000 * 13 * 50) / 1e6, 3)
    const piece = valueOf(option.pieces).pieces.find(({ pieceId }) => pieceId === 'strip')
    expect([piece?.name, piece?.use]).toEqual(['Strip', 'placed'])
  })

  it('CUT-8 reports by name a piece whose anchor is no longer in an offcut, and one that shares its wood', () => {
    const lost = withCuts(short, {
      pieces: [
        { id: 'p', name: 'Lost', slabId: 'slab', anchor: [900, 300] as never },
        { id: 'q', name: 'One', slabId: 'slab', anchor: [900, -125] as never },
        { id: 'r', name: 'Other', slabId: 'slab', anchor: [100, -125] as never },
      ],
    })
    const { issues } = computePlan(flatPlan(slab, lost))
    expect(issues.map(({ code, values }) => [code, values])).toEqual([
      ['piece-anchor-lost', { pieceName: 'Lost' }],
      ['piece-anchor-shared', { pieceName: 'Other', otherName: 'One' }],
    ])
  })

  it('takes no resin beyond a live edge that is kept', () => {
    const kept = withCuts(short, {
      table: { ...short.table, sides: { ...short.table.sides, near: { finish: 'live', oversizeMm: 0 } } },
    })
    const { option } = resultOf(flatPlan(slab, kept))
    expect(valueOf(option.resin).gapLitres).toBe(0)
    expect(valueOf(option.coverage).keptEdges[0]?.leastWidthMm).toBeCloseTo(740, 2)
    expect(valueOf(option.pieces).cuts.map(({ side }) => side)).toEqual(['start', 'end', 'far'])
  })

  it('takes a hole’s own depth, and a through hole as deep as the cast', () => {
    const holed = flatSlab({
      voids: [
        { ring: flatBox(200, 100, 300, 200), depthMm: 20 },
        { ring: flatBox(600, 100, 700, 200), depthMm: null },
      ],
    })
    const { option } = resultOf(flatPlan(holed))
    // 100 × 100 × 20 mm and 100 × 100 × 50 mm.
    expect(valueOf(option.resin).voidLitres).toBeCloseTo(0.2 + 0.5, 4)
    expect(valueOf(option.verdict)).toMatchObject({ kind: 'covers-with-voids', voids: 2 })
  })
})

describe('a slab of which nobody has typed the thickness', () => {
  const unmeasured = flatSlab({
    thicknessMm: null,
    voids: [
      { ring: flatBox(200, 100, 300, 200), depthMm: 20 },
      { ring: flatBox(600, 100, 700, 200), depthMm: null },
    ],
  })
  const missing = 'slab-thickness-missing/slabs/slab/thicknessMm'

  it('PLN-3 has cuts and coverage, with the depth of its voids as said, and no resin', () => {
    const { slab, option } = resultOf(flatPlan(unmeasured))
    expect(valueOf(slab.shape).voids.map(({ depthMm }) => depthMm)).toEqual([20, null])
    expect(valueOf(option.pieces).cuts).toHaveLength(4)
    expect(valueOf(option.verdict)).toMatchObject({ kind: 'covers-with-voids', voids: 2 })
    expect(option.resin).toEqual({ state: 'blocked', because: [missing] })
    expect(option.pour).toEqual({ state: 'blocked', because: [missing] })
  })

  it('says so once, and nothing about a table that may be too thick', () => {
    const { issues } = computePlan(flatPlan(unmeasured))
    expect(issues.map(({ id, severity }) => [id, severity])).toEqual([[missing, 'blocker']])
  })
})

describe('computePlan parts', () => {
  it('PLN-3 names what blocks a part', () => {
    const plan = flatPlan()
    const untraced = flatSlab()
    const capture = untraced.capture.kind === 'photo' ? { ...untraced.capture, traces: [] } : untraced.capture
    const { slab, option } = resultOf({ ...plan, slabs: [{ ...untraced, capture }] })
    expect(slab.scale.state).toBe('ready')
    expect(slab.shape).toEqual({ state: 'blocked', because: ['outline-missing/slabs/slab'] })
    expect(option.resin).toEqual({ state: 'blocked', because: ['outline-missing/slabs/slab'] })
  })

  it('PLN-3 a crossed outline is named with its edges', () => {
    const crossed = flatSlab({ outline: [flatPx(0, 0), flatPx(1000, 500), flatPx(1000, 0), flatPx(0, 500)] })
    const { issues } = computePlan(flatPlan(crossed))
    expect(issues[0]?.code).toBe('outline-crosses-itself')
  })

  it('PLN-2 works out anew only what changed', () => {
    const plan = flatPlan()
    const first = resultOf(plan)
    const [option] = plan.options
    if (option === undefined) throw new Error('no option')
    const dearer = { ...plan, options: [{ ...option, resin: { ...option.resin, pricePerLitreCents: 2500 } }] }
    const second = resultOf(dearer)
    expect(second.slab).toBe(first.slab)
    expect(second.option.coverage).toBe(first.option.coverage)
    expect(second.option.resin).not.toBe(first.option.resin)
    expect(computePlan(flatPlan())).toEqual(computePlan(flatPlan()))
  })

  it('computes a slab that was taped in stations', () => {
    const plan = flatPlan()
    const [slab] = plan.slabs
    if (slab === undefined) throw new Error('no slab')
    const stations = [
      { alongMm: 0, leftMm: 400, rightMm: 420 },
      { alongMm: 1000, leftMm: 380, rightMm: 430 },
      { alongMm: 2100, leftMm: 410, rightMm: 400 },
    ]
    const { slab: result } = resultOf({
      ...plan,
      slabs: [{ ...slab, capture: { kind: 'stations', stations } }],
    })
    // Trapezoids: (820 + 810)/2 · 1000 + (810 + 810)/2 · 1100.
    expect(valueOf(result.shape).woodAreaMm2).toBeCloseTo(815_000 + 891_000, 6)
  })
})
