import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../tests/support/flatPlan'
import { computePlan } from './computePlan'
import type { Part } from './part'
import type { Plan, Slab, Trace } from './schema'

type Meaning = Trace['meaning']

/** The flat slab of 2200 × 900 mm with lines of these meanings in it, 1 px to the mm. */
function slabWith(
  lines: readonly { readonly meaning: Meaning; readonly ring: Trace['ringPx'] }[],
  cutBackMm = 0,
): Slab {
  const slab = flatSlab()
  if (slab.capture.kind !== 'photo') throw new Error('no photo')
  const [outline] = slab.capture.traces
  if (outline === undefined) throw new Error('no outline')
  const within = lines.map(({ meaning, ring }, n) => ({
    ...outline,
    id: `line${n}`,
    meaning,
    ringPx: ring,
  }))
  const meaning = { kind: 'outline', cutBackMm } as const
  return { ...slab, capture: { ...slab.capture, traces: [{ ...outline, meaning }, ...within] } }
}

function shapeOfPlan(plan: Plan) {
  const result = computePlan(plan)
  const slab = result.slabs.get('slab')
  const option = result.options.get('option')
  if (slab === undefined || option === undefined) throw new Error('no result')
  return { slab, option, codes: result.issues.map(({ code }) => code), issues: result.issues }
}

function valueOf<T>(part: Part<T>): T {
  if (part.state !== 'ready') throw new Error(part.state)
  return part.value
}

const small = flatOption(1000, 400, { xMm: 300, yMm: 100 })
const THROUGH = { kind: 'through' } as const

// By hand: the slab's box is from (−200, −150) to (2000, 750), 2200 × 900 mm; 1 px is 1 mm.
describe('slabShape', () => {
  it('PLN-12 cuts decayed wood back from the whole edge: 2160 × 860 mm are left of 2200 × 900 with 20 mm', () => {
    const { slab } = shapeOfPlan(flatPlan(slabWith([], 20), small))
    const shape = valueOf(slab.shape)
    expect(shape.lengthMm).toBeCloseTo(2160, 2)
    expect(shape.widthMm).toBeCloseTo(860, 2)
    expect(shape.woodAreaMm2).toBeCloseTo(2160 * 860, -1)
    expect(shape.tracedOutline).not.toBe(shape.outline)
  })

  it('PLN-12 the table at the old edge then wants resin where the wood was cut back', () => {
    const atEdge = flatOption(1000, 400, { xMm: 300, yMm: -150 })
    const before = valueOf(shapeOfPlan(flatPlan(slabWith([]), atEdge)).option.coverage)
    const after = valueOf(shapeOfPlan(flatPlan(slabWith([], 20), atEdge)).option.coverage)
    expect(before.edgeGapAreaMm2).toBeCloseTo(0, 0)
    expect(after.edgeGapAreaMm2).toBeCloseTo(1000 * 20, -1)
  })

  it('PLN-12 is blocked, with its reason, where nothing would be left', () => {
    const { slab, codes } = shapeOfPlan(flatPlan(slabWith([], 460), small))
    expect(slab.shape.state).toBe('blocked')
    expect(codes).toContain('outline-cut-away')
  })

  it('PLN-12 keeps the largest part of a slab that falls apart, and says so', () => {
    const { capture } = slabWith([], 60)
    if (capture.kind !== 'photo') throw new Error('no photo')
    // A dumb-bell: 1000 and 600 mm long ends of 900 mm, and a bridge of 100 mm that 60 mm from both sides cuts through.
    const corners = [
      [-200, -150],
      [800, -150],
      [800, 250],
      [1400, 250],
      [1400, -150],
      [2000, -150],
      [2000, 750],
      [1400, 750],
      [1400, 350],
      [800, 350],
      [800, 750],
      [-200, 750],
    ] as const
    const ringPx = corners.map(([x, y]) => flatBox(x, y, x + 1, y + 1)[0])
    const traces = capture.traces.map((trace) => ({
      ...trace,
      ringPx: ringPx.filter((at) => at !== undefined),
    }))
    const slab = { ...flatSlab(), capture: { ...capture, traces } }
    const result = shapeOfPlan(flatPlan(slab, small))
    expect(result.codes).toContain('outline-cut-apart')
    // Between the circles of 60 mm about the bridge's two corners, 100 mm apart, 2 · ∫₀⁵⁰ (60 − √(3600 − d²)) dd more is left.
    const bulgeMm2 = 2 * (60 * 50 - (25 * Math.sqrt(1100) + 1800 * Math.asin(5 / 6)))
    expect(Math.abs(valueOf(result.slab.shape).woodAreaMm2 - 880 * 780 - bulgeMm2)).toBeLessThan(10)
  })

  it('PLN-12 takes bark and cracks out of the wood: bark right through, a crack to its depth', () => {
    const { slab, option } = shapeOfPlan(
      flatPlan(
        slabWith([
          { meaning: { kind: 'bark' }, ring: flatBox(500, 200, 600, 300) },
          {
            meaning: { kind: 'crack', depth: { kind: 'partial', depthMm: 20 } },
            ring: flatBox(700, 200, 900, 210),
          },
          { meaning: { kind: 'void', depth: THROUGH }, ring: flatBox(1000, 200, 1050, 250) },
          { meaning: { kind: 'crack', depth: THROUGH }, ring: flatBox(1100, 200, 1200, 210) },
        ]),
        small,
      ),
    )
    const { voids, woodAreaMm2 } = valueOf(slab.shape)
    expect(voids.map(({ name, kind, depthMm }) => [name, kind, depthMm])).toEqual([
      ['B1', 'bark', null],
      ['C1', 'crack', 20],
      ['V1', 'void', null],
      ['C2', 'crack', null],
    ])
    expect(woodAreaMm2).toBeCloseTo(2200 * 900 - 10_000 - 2000 - 2500 - 1000, -1)
    expect(valueOf(option.coverage).voidGapAreaMm2).toBeCloseTo(15_500, -1)
  })

  it('PLN-13 tells of a defect in the table and of a figure outside it, and leaves both as wood', () => {
    const inside = flatBox(500, 200, 600, 300)
    const half = flatBox(200, 200, 400, 300)
    const outside = flatBox(1500, 200, 1600, 300)
    const plan = (kind: 'defect' | 'figure', ring: Trace['ringPx']): Plan =>
      flatPlan(slabWith([{ meaning: { kind }, ring }]), small)
    const defect = shapeOfPlan(plan('defect', inside))
    expect(defect.issues.find(({ code }) => code === 'table-on-defect')?.values).toMatchObject({
      traceName: 'D1',
    })
    expect(valueOf(defect.slab.shape).woodAreaMm2).toBeCloseTo(2200 * 900, -1)
    expect(shapeOfPlan(plan('defect', outside)).codes).not.toContain('table-on-defect')
    expect(shapeOfPlan(plan('figure', inside)).codes).not.toContain('table-beside-figure')
    const beside = shapeOfPlan(plan('figure', half)).issues.find(({ code }) => code === 'table-beside-figure')
    expect(beside?.values['outsideFraction']).toBeCloseTo(0.5, 3)
  })
})
