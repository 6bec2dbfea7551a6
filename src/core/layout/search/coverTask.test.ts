import { describe, expect, it } from 'vitest'
import { slabRegions, tableRing } from '../../../../tests/support/coverReference'
import { randomSlab } from '../../../../tests/support/randomSlab'
import { coverProgress, coverSearch, type CoverTask } from './coverTask'
import { NO_WISHES } from './poseWishes'

const regions = slabRegions(randomSlab(5))
const size = { lengthMm: 1200, widthMm: 600 }
const free = { resinShare: 0, grain: null }

const TASKS: readonly CoverTask[] = [
  { kind: 'bestPose', regions, ...size, wishes: NO_WISHES },
  { kind: 'fit', regions, ...size, ...free },
  { kind: 'largestTable', regions, widthMm: 600, ...free },
  { kind: 'frontier', regions, widthsMm: [500, 600], ...free },
  { kind: 'largestShape', regions, outline: tableRing(1200, 600), growth: 'margin', grain: null },
  { kind: 'keptTable', regions, keep: 'one', leastWidthMm: 600, grain: null },
  {
    kind: 'twoSlabs',
    slabs: [
      { id: 'a', regions, grain: null },
      { id: 'b', regions, grain: null },
    ],
    ...size,
    jointMm: 0,
    mostBandMm: 0,
  },
]

function problemOf(task: CoverTask): string | null {
  const search = coverSearch(task)
  return search.ok ? null : search.problem.code
}

describe('coverSearch', () => {
  it.each(TASKS)('LAY-21 finds something for $kind', (task) => {
    const search = coverSearch(task)
    if (!search.ok) throw new Error(search.problem.code)
    const state = search.value.step(Infinity)
    expect(state.isDone).toBe(true)
    expect(state.incumbent).not.toBeNull()
    expect(coverProgress(state)).toBeGreaterThan(0.5)
  })

  it.each(TASKS)('LAY-21 says of $kind without wood that there is none', (task) => {
    const bare =
      task.kind === 'twoSlabs'
        ? { ...task, slabs: task.slabs.map((slab) => ({ ...slab, regions: [] })) }
        : { ...task, regions: [] }
    expect(problemOf(bare)).toBe('cover-no-wood')
  })

  it('LAY-21 says which figure of the table is missing', () => {
    expect(problemOf({ kind: 'fit', regions, ...size, ...free, widthMm: 0 })).toBe('cover-table-no-size')
    expect(problemOf({ kind: 'largestTable', regions, widthMm: Number.NaN, ...free })).toBe(
      'cover-table-no-size',
    )
    expect(problemOf({ kind: 'largestTable', regions, widthMm: 600, grain: null, resinShare: 1 })).toBe(
      'cover-share-out-of-range',
    )
    const line = [...tableRing(1000, 0)]
    expect(problemOf({ kind: 'largestShape', regions, outline: line, growth: 'factor', grain: null })).toBe(
      'cover-table-no-size',
    )
  })

  it('LAY-21 answers for two slabs though a third has no wood', () => {
    const task = TASKS.find((one) => one.kind === 'twoSlabs')
    if (task?.kind !== 'twoSlabs') throw new Error('no task')
    const search = coverSearch({ ...task, slabs: [...task.slabs, { id: 'bare', regions: [], grain: null }] })
    if (!search.ok) throw new Error(search.problem.code)
    expect(search.value.step(Infinity).incumbent).toHaveLength(1)
  })
})
