import { describe, expect, it } from 'vitest'
import { computePlan, type Plan } from '../../core/plan'
import { flatPlan } from '../../../tests/support/flatPlan'
import { readyValue } from '../readyValue'
import { slabBounds } from './scene'

/** The flat plan's photo is looked at straight down, with the whole slab in it. */
function untraced(): Plan {
  const plan = flatPlan()
  return {
    ...plan,
    slabs: plan.slabs.map((slab) =>
      slab.capture.kind === 'photo' ? { ...slab, capture: { ...slab.capture, traces: [] } } : slab,
    ),
  }
}

const boundsOf = (plan: Plan) => {
  const [slab] = [...computePlan(plan).slabs.values()]
  const bounds = slabBounds(slab ?? null)
  if (slab === undefined || bounds === null) throw new Error('no bounds')
  return { slab, bounds }
}

describe('what is shown of the slab from above', () => {
  it('is the slab itself once it is traced', () => {
    const { slab, bounds } = boundsOf(flatPlan())
    const shape = readyValue(slab.shape)
    expect(bounds.maxX - bounds.minX).toBeCloseTo(shape?.lengthMm ?? 0, 6)
  })

  it('holds all of the slab before it is traced, however near its middle the marks stand', () => {
    const traced = boundsOf(flatPlan()).bounds
    const { bounds } = boundsOf(untraced())
    expect(bounds.minX).toBeLessThanOrEqual(traced.minX)
    expect(bounds.minY).toBeLessThanOrEqual(traced.minY)
    expect(bounds.maxX).toBeGreaterThanOrEqual(traced.maxX)
    expect(bounds.maxY).toBeGreaterThanOrEqual(traced.maxY)
  })

  it('goes no further than the photo, nor than one and a half spans of the marks', () => {
    const { slab, bounds } = boundsOf(untraced())
    const marks = readyValue(slab.scale)?.markPositions.map(({ at }) => at) ?? []
    const xs = marks.map(([x]) => x)
    const ys = marks.map(([, y]) => y)
    const span = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
    expect(bounds.maxX).toBeLessThanOrEqual(Math.max(...xs) + 1.5 * span + 1e-6)
    expect(bounds.minX).toBeGreaterThanOrEqual(Math.min(...xs) - 1.5 * span - 1e-6)
  })
})
