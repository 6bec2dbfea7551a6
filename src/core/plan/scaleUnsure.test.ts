import { describe, expect, it } from 'vitest'
import { flatPlan } from '../../../tests/support/flatPlan'
import { computePlan } from './computePlan'
import type { Plan } from './schema'

/** The flat plan with every mark of its photo set with a deviation, and refined or left as clicked. */
function clicked(sdPx: number, kind: 'kept' | 'none'): Plan {
  const plan = flatPlan()
  return {
    ...plan,
    slabs: plan.slabs.map((slab) =>
      slab.capture.kind === 'photo'
        ? {
            ...slab,
            capture: {
              ...slab.capture,
              photos: slab.capture.photos.map((photo) => ({
                ...photo,
                observations: photo.observations.map((seen) => ({ ...seen, sdPx, refinement: { kind } })),
              })),
            },
          }
        : slab,
    ),
  }
}

const unsure = (plan: Plan) => computePlan(plan).issues.filter(({ code }) => code === 'scale-unsure')

describe('lengths that the photo hardly tells', () => {
  it('are said, with the marks to set again', () => {
    const [issue] = unsure(clicked(30, 'none'))
    expect(issue?.severity).toBe('warning')
    expect(issue?.values['markNames']).toBe('A, B, C, D')
    const { plusMinusMm, lengthMm } = issue?.values ?? {}
    expect(Number(plusMinusMm) / Number(lengthMm)).toBeGreaterThan(0.015)
  })

  it('are not doubted where the marks sit well', () => {
    expect(unsure(clicked(0.3, 'kept'))).toEqual([])
  })
})
