import { readFileSync } from 'node:fs'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { computePlan, type Plan, type SlowAnswers } from '../../src/core/plan'

const DEMOS = ['library-table', 'kitchen-table'] as const
const STEPS = 60

/**
 * One step of a drag must not take longer than so many plain intersections of slab and blank by a general clipping
 * library, measured side by side. A drag makes about ten such operations' worth of results (a busy machine measures up to 14), so the bound also catches
 * a part that has stopped remembering its slice.
 */
const MOST_INTERSECTIONS = 20

const demoPlan = (name: string): Plan =>
  JSON.parse(readFileSync(new URL(`../../demo-data/${name}/plan.json`, import.meta.url), 'utf8')) as Plan

/** As the screen asks while a finger is down: no answers of workers, no draws for the ±. */
const DRAFT: SlowAnswers = { pour: () => null, build: () => null, isDraft: true }

const moved = (plan: Plan, byMm: number): Plan => ({
  ...plan,
  options: plan.options.map((option) =>
    option.footprint === null
      ? option
      : {
          ...option,
          footprint: {
            ...option.footprint,
            pose: { ...option.footprint.pose, xMm: option.footprint.pose.xMm + byMm },
          },
        },
  ),
})

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

/**
 * Two kinds of work in turn, A B A B …, so that a busy machine slows both alike.
 * @returns median of five runs of the mean time of one call of each, ms
 */
function sideBySideMs(a: (step: number) => void, b: () => void): readonly [aMs: number, bMs: number] {
  const runs = Array.from({ length: 5 }, () => {
    let [aMs, bMs] = [0, 0]
    for (let step = 1; step <= STEPS; step++) {
      const from = performance.now()
      a(step)
      const between = performance.now()
      b()
      aMs += between - from
      bMs += performance.now() - between
    }
    return [aMs / STEPS, bMs / STEPS] as const
  })
  return [median(runs.map(([aMs]) => aMs)), median(runs.map(([, bMs]) => bMs))]
}

/** One intersection of the slab's outline and the blank by the general library. */
function oneIntersection(plan: Plan): () => void {
  const [option] = computePlan(plan).options.values()
  const [slab] = computePlan(plan).slabs.values()
  if (option?.footprint.state !== 'ready' || slab?.shape.state !== 'ready')
    throw new Error('demo is not ready')
  const ring = (points: readonly (readonly [number, number])[]) => [
    points.map(([x, y]) => [x, y] as [number, number]),
  ]
  const outline = ring(slab.shape.value.outline)
  const blank = ring(option.footprint.value.blankOnSlab)
  return () => void polygonClipping.intersection(outline, blank)
}

describe.each(DEMOS)('dragging the table of the demo job %s', (name) => {
  const plan = demoPlan(name)

  it('takes no longer than a score of intersections by a general library', () => {
    let sum = 0
    const [dragMs, referenceMs] = sideBySideMs((step) => {
      const [option] = computePlan(moved(plan, step * 0.37 + sum * 1e-12), DRAFT).options.values()
      if (option?.resin.state === 'ready') sum += option.resin.value.gapLitres
    }, oneIntersection(plan))
    const ratio = dragMs / referenceMs
    console.log(
      JSON.stringify({ bench: 'drag', name, dragMs, referenceMs, ratio, litresSummed: Math.round(sum) }),
    )
    expect(ratio).toBeLessThan(MOST_INTERSECTIONS)
  })

  it('notices a drag that works everything out anew', () => {
    // A plan read afresh at each step shares no slice with the last one, so nothing can be remembered.
    const [coldMs, referenceMs] = sideBySideMs((step) => {
      computePlan(moved(JSON.parse(JSON.stringify(plan)) as Plan, step * 0.37), DRAFT)
    }, oneIntersection(plan))
    expect(coldMs / referenceMs).toBeGreaterThan(MOST_INTERSECTIONS)
  })
})
