import { describe, expect, it } from 'vitest'
import { MOST_VERSIONS, versionsToDrop } from './thinVersions'

/** Work of so many seconds, one save a second, thinned after each. */
function keptAfter(seconds: number): readonly number[] {
  let kept: readonly number[] = []
  for (let second = 1; second <= seconds; second++) {
    const all = [...kept, second * 1000]
    const gone = new Set(versionsToDrop(all, second * 1000))
    kept = all.filter((time) => !gone.has(time))
  }
  return kept
}

describe('versionsToDrop', () => {
  it('drops nothing while there is room', () => {
    expect(versionsToDrop([1, 2, 3], 10)).toEqual([])
    expect(versionsToDrop([], 10)).toEqual([])
  })

  it('keeps the newest and the oldest, and as many as are allowed', () => {
    const kept = keptAfter(20_000)
    expect(kept).toHaveLength(MOST_VERSIONS)
    expect(kept[0]).toBe(1000)
    expect(kept.at(-1)).toBe(20_000_000)
  })

  it('keeps a version near every age: none is more than three times as old as the next younger one', () => {
    const kept = keptAfter(20_000)
    const ages = kept.map((time) => 20_000_000 - time).toReversed()
    const steps = ages.slice(1).map((age, at) => age / Math.max(ages[at] ?? 1, 1000))
    expect(Math.max(...steps)).toBeLessThan(3)
    expect(ages.filter((age) => age <= 60_000).length).toBeGreaterThanOrEqual(5)
  })

  it('takes saves at one and the same time', () => {
    expect(versionsToDrop([5, 5, 5, 5], 5, 2)).toHaveLength(2)
  })
})
