import { describe, expect, it } from 'vitest'
import { computePlan } from '../../src/core/plan'
import { flatPlan } from '../support/flatPlan'
import { balancesOf, numbersIn } from '../support/planBalance'
import { randomPlan } from '../support/randomPlan'

// A slice of the campaign, which tries many more seeds.
const SEEDS = Array.from({ length: 60 }, (_, n) => 5000 + n)

/** Slivers on the clipping kernels' grids (1/10 000 mm) along some metres of edge. */
const MOST_OFF_MM2 = 10

describe('areas by another library', () => {
  it.each(SEEDS)('PLN-5 conserve wood and table, and every figure is finite: seed %i', (seed) => {
    const plan = randomPlan(seed)
    expect(numbersIn(computePlan(plan)).filter((number) => !Number.isFinite(number))).toEqual([])
    for (const { balances } of balancesOf(plan)) {
      expect(balances.filter(({ offMm2 }) => !(Math.abs(offMm2) < MOST_OFF_MM2))).toEqual([])
    }
  })

  it('are there to be compared in most plans, and wood is laid in some', () => {
    const all = SEEDS.flatMap((seed) => balancesOf(randomPlan(seed)))
    expect(all.length).toBeGreaterThan(SEEDS.length / 2)
    const most = 5 * all.length
    expect(all.reduce((sum, { balances }) => sum + balances.length, 0)).toBeGreaterThan(0.97 * most)
    expect(all.filter(({ isWoodLaid }) => isWoodLaid).length).toBeGreaterThan(3)
  })

  it('would notice a square centimetre of wood that nobody has', () => {
    const plan = flatPlan()
    const result = computePlan(plan)
    const [[id, option] = ['', undefined]] = [...result.options]
    if (option?.coverage.state !== 'ready') throw new Error('not ready')
    const value = { ...option.coverage.value, mainAreaMm2: option.coverage.value.mainAreaMm2 + 100 }
    const options = new Map([[id, { ...option, coverage: { ...option.coverage, value } }]])
    const off = balancesOf(plan, { ...result, options }).flatMap(({ balances }) => balances)
    expect(off.filter(({ offMm2 }) => Math.abs(offMm2) > MOST_OFF_MM2)).toHaveLength(2)
  })
})
