import { describe, expect, it } from 'vitest'
import { slabPoint } from '../../src/core/geometry'
import { computePlan, planSchema, type Plan } from '../../src/core/plan'
import { pxFromSlabPoint, slabPointFromPx } from '../../src/core/photo'
import { flatPlan, flatPx } from '../support/flatPlan'
import { randomPlan } from '../support/randomPlan'

const SEEDS = Array.from({ length: 150 }, (_, index) => 1000 + index)

/** Wood that neither was nor is: the area balances of a plan, each term by its own route, mm². */
function imbalancesMm2(plan: Plan): readonly number[] {
  const result = computePlan(plan)
  return [...result.options.values()].flatMap(({ coverage }) => {
    if (coverage.state !== 'ready') return []
    const c = coverage.value
    const gaps = c.gaps.reduce((sum, gap) => sum + gap.areaMm2, 0)
    return [
      c.mainAreaMm2 + c.laidAreaMm2 + c.leftOverAreaMm2 + c.kerfAreaMm2 - c.slabWoodAreaMm2,
      c.mainAreaMm2 + c.laidAreaMm2 + gaps - c.blankAreaMm2,
    ]
  })
}

function numbersIn(value: unknown, into: number[] = []): readonly number[] {
  if (typeof value === 'number') into.push(value)
  else if (value instanceof Map) value.forEach((item) => numbersIn(item, into))
  else if (typeof value === 'object' && value !== null)
    Object.values(value).forEach((item) => numbersIn(item, into))
  return into
}

describe('random legal plans', () => {
  it('are legal, and many of them lay wood into the table', () => {
    const plans = SEEDS.map(randomPlan)
    expect(plans.every((plan) => planSchema.safeParse(plan).success)).toBe(true)
    const laid = plans.filter((plan) =>
      [...computePlan(plan).options.values()].some(
        ({ coverage }) => coverage.state === 'ready' && coverage.value.laidAreaMm2 > 0,
      ),
    )
    expect(laid.length).toBeGreaterThan(10)
  })

  it.each(SEEDS)('PLN-1 and PLN-5 compute to finite figures and conserve area: seed %i', (seed) => {
    const plan = randomPlan(seed)
    expect(numbersIn(computePlan(plan)).every(Number.isFinite)).toBe(true)
    for (const imbalance of imbalancesMm2(plan)) expect(Math.abs(imbalance)).toBeLessThan(10)
  })

  it('PLN-5 notices a plan whose figures do not balance', () => {
    const honest = computePlan(flatPlan()).options.get('option')?.coverage
    if (honest?.state !== 'ready') throw new Error('not ready')
    const { mainAreaMm2, leftOverAreaMm2, kerfAreaMm2, slabWoodAreaMm2 } = honest.value
    expect(Math.abs(mainAreaMm2 + leftOverAreaMm2 + kerfAreaMm2 - slabWoodAreaMm2)).toBeLessThan(1)
    expect(Math.abs(mainAreaMm2 + leftOverAreaMm2 - slabWoodAreaMm2)).toBeGreaterThan(1000)
  })
})

describe('a new reference', () => {
  it('PLN-6 that is exact moves nothing on the wood by more than 0.01 mm', () => {
    const plan = flatPlan()
    const [slab] = plan.slabs
    if (slab === undefined || slab.capture.kind !== 'photo') throw new Error('no photo')
    const [photo] = slab.capture.photos
    if (photo === undefined) throw new Error('no photo')
    const more: Plan = {
      ...plan,
      slabs: [
        {
          ...slab,
          marks: [...slab.marks, { id: 'e', name: 'E', heightMm: 0 }],
          tapedDistances: [
            ...slab.tapedDistances,
            { id: 'ae', markIds: ['a', 'e'], lengthMm: 500 },
            { id: 'be', markIds: ['b', 'e'], lengthMm: Math.hypot(1400, 300) },
          ],
          capture: {
            ...slab.capture,
            photos: [
              {
                ...photo,
                observations: [
                  ...photo.observations,
                  { markId: 'e', atPx: flatPx(400, 300), sdPx: null, refinement: { kind: 'none' as const } },
                ],
              },
            ],
          },
        },
      ],
    }
    const corners = [slabPoint(-100, -100), slabPoint(1900, -100), slabPoint(1900, 700), slabPoint(-100, 700)]
    const frameOf = (of: Plan) => {
      const scale = computePlan(of).slabs.get('slab')?.scale
      if (scale?.state !== 'ready') throw new Error('no scale')
      return scale.value.frame
    }
    const [before, after] = [frameOf(plan), frameOf(more)]
    for (const corner of corners) {
      const [x, y] = slabPointFromPx(after, pxFromSlabPoint(before, corner))
      expect(Math.hypot(x - corner[0], y - corner[1])).toBeLessThan(0.01)
    }
  })
})
