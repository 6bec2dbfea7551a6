import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatPx, flatSlab } from '../../../../tests/support/flatPlan'
import { randomSlab } from '../../../../tests/support/randomSlab'
import { regionsDistanceMm } from '../../geometry'
import { fillSearch } from '../../layout'
import { computePlan } from '../computePlan'
import type { Option } from '../schema'
import { planSchema } from '../schema'
import { fillTaskOf } from './fillTaskOf'
import { withFillProposal } from './withFillProposal'

const slabShape = randomSlab(4)
const toPx = (ring: readonly (readonly [number, number])[]) => ring.map(([x, y]) => flatPx(x, y))
const SLAB = flatSlab({
  outline: toPx(slabShape.outer),
  voids: slabShape.holes.map((ring, i) => ({ ring: toPx(ring), depthMm: i === 0 ? 20 : null })),
})
const LAID: Option = {
  ...flatOption(1200, 520, { xMm: 150, yMm: -250 }),
  cuts: (['start', 'end', 'far', 'near'] as const).map((side) => ({
    kind: 'footprint',
    id: side,
    side,
    kerfMm: 3,
  })),
  leastJointMm: 6,
}

function figuresOf(option: Option) {
  const plan = flatPlan(SLAB, option)
  expect(planSchema.safeParse(plan).success).toBe(true)
  const result = computePlan(plan)
  const [own, slab] = [result.options.get('option'), result.slabs.get('slab')]
  if (own?.coverage.state !== 'ready' || slab?.shape.state !== 'ready') throw new Error('not ready')
  return { result: own, coverage: own.coverage.value, shape: slab.shape.value, issues: result.issues }
}

/** Moved over the wood until gaps and offcuts are there. */
function shortOption(): Option {
  for (const yMm of [-450, -350, -250, -150]) {
    const option = {
      ...LAID,
      footprint: { slabId: 'slab', pose: { xMm: -100, yMm, angleRad: 0, turnedOver: false } },
    }
    const { coverage, result } = figuresOf(option)
    const offcuts = result.pieces.state === 'ready' ? result.pieces.value.pieces : []
    if (coverage.edgeGapAreaMm2 > 30_000 && offcuts.some(({ use }) => use === 'offcut')) return option
  }
  throw new Error('no gap to fill')
}

describe('withFillProposal', () => {
  const option = shortOption()
  const before = figuresOf(option)
  const task = fillTaskOf({ option, result: before.result, shape: before.shape, seed: 1 })
  if (task === null) throw new Error('no task')
  const search = fillSearch(task)
  if (!search.ok) throw new Error(search.problem.code)
  const [best] = search.value.step(8_000).incumbent?.proposals ?? []
  if (best === undefined) throw new Error('no proposal')
  let ids = 0
  const makeId = (): string => `id${(ids += 1)}`

  it('LAY-24 makes of a proposal what the plan then computes: so much less gap, no overlap, nothing lost', () => {
    const after = figuresOf(withFillProposal(option, 'slab', best, makeId))
    expect(after.coverage.laidAreaMm2).toBeCloseTo(best.filledMm2, -1)
    const gap = (of: typeof before) => of.coverage.edgeGapAreaMm2 + of.coverage.voidGapAreaMm2
    expect(Math.abs(gap(before) - gap(after) - best.filledMm2)).toBeLessThan(10)
    const codes = after.issues.map(({ code }) => code)
    for (const code of ['pieces-overlap', 'piece-anchor-lost', 'piece-anchor-shared', 'cut-misses-piece']) {
      expect(codes).not.toContain(code)
    }
  })

  it('LAY-23 keeps the option’s own joint, measured on the plan’s result', () => {
    const { coverage } = figuresOf(withFillProposal(option, 'slab', best, makeId))
    for (const [i, { inBlank }] of coverage.laid.entries()) {
      const others = coverage.laid.filter((_, j) => j !== i).flatMap((piece) => piece.inBlank)
      expect(regionsDistanceMm(inBlank, [...coverage.mainWood, ...others])).toBeGreaterThan(6 - 1e-3)
    }
  })

  it('LAY-24 lets a named offcut go on as the first piece cut from it', () => {
    const piece = best.pieces[0]
    if (piece === undefined) throw new Error('no piece')
    const named = {
      ...option,
      pieces: [{ id: 'mine', name: 'Long one', slabId: 'slab', anchor: piece.anchor }],
    }
    const own = { ...best, pieces: [{ ...piece, offcutKey: 'mine' }] }
    const after = withFillProposal(named, 'slab', own, makeId)
    expect(after.pieces.map(({ id, name }) => [id, name])).toEqual([['mine', 'Long one']])
    expect(figuresOf(after).coverage.laidAreaMm2).toBeCloseTo(piece.areaMm2, -1)
  })
})
