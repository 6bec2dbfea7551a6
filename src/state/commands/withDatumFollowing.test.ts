import { describe, expect, it } from 'vitest'
import { flatPlan, flatPx } from '../../../tests/support/flatPlan'
import type { Plan } from '../../core/plan'
import { moveMark } from './markCommands'

const datumOf = (plan: Plan) => {
  const capture = plan.slabs[0]?.capture
  return capture?.kind === 'photo' ? capture.datum : null
}

const unlaid = (plan: Plan): Plan => ({
  ...plan,
  options: plan.options.map((option) => ({ ...option, footprint: null })),
})

const move = (plan: Plan, markId: string): Plan =>
  moveMark.apply(plan, { slabId: 'slab', photoId: 'photo', markId, atPx: flatPx(7, 3) })

describe('moving a mark on which the datum ends', () => {
  it('takes the datum’s end along while nothing is laid on the wood', () => {
    expect(datumOf(move(unlaid(flatPlan()), 'a'))).toEqual({
      photoId: 'photo',
      fromPx: flatPx(7, 3),
      toPx: flatPx(1800, 0),
    })
  })

  it('leaves the datum where it is once a table lies on the wood', () => {
    const plan = flatPlan()
    expect(datumOf(move(plan, 'a'))).toBe(datumOf(plan))
  })

  it('leaves the datum where it is for a mark beside it', () => {
    const plan = unlaid(flatPlan())
    expect(datumOf(move(plan, 'c'))).toBe(datumOf(plan))
  })
})
