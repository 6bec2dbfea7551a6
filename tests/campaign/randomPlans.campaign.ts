import { expect, it } from 'vitest'
import { computePlan, planSchema } from '../../src/core/plan'
import { casesOf, firstSeed, reportCampaign } from '../support/campaignReport'
import { balancesOf, numbersIn } from '../support/planBalance'
import { randomPlan } from '../support/randomPlan'

/** Slivers on the clipping kernels' grids along some metres of edge. */
const MOST_OFF_MM2 = 10

it('random legal plans compute to finite figures and conserve wood and table, by another library too', () => {
  const cases = casesOf(2500)
  const wrong: string[] = []
  const worst: Record<string, number> = {}
  let compared = 0
  let laid = 0
  for (let seed = firstSeed(); seed < firstSeed() + cases; seed++) {
    const plan = randomPlan(seed)
    if (!planSchema.safeParse(plan).success) wrong.push(`seed ${seed}: not legal`)
    const result = computePlan(plan)
    if (!numbersIn(result).every(Number.isFinite)) wrong.push(`seed ${seed}: a figure is not finite`)
    for (const { balances, isWoodLaid } of balancesOf(plan, result)) {
      if (isWoodLaid) laid++
      for (const { name, offMm2 } of balances) {
        compared++
        worst[name] = Math.max(worst[name] ?? 0, Math.abs(offMm2))
        if (!(Math.abs(offMm2) < MOST_OFF_MM2)) wrong.push(`seed ${seed}: ${name} off by ${offMm2} mm²`)
      }
    }
  }
  reportCampaign('random plans', { firstSeed: firstSeed(), cases, compared, laid, worstMm2: worst, wrong })
  expect(wrong).toEqual([])
})
