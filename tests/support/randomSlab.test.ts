import { describe, expect, it } from 'vitest'
import { normaliseOutline, regionAreaMm2, ringAreaMm2 } from '../../src/core/geometry'
import { randomSlab } from './randomSlab'

describe('randomSlab', () => {
  const seeds = Array.from({ length: 60 }, (_, i) => i + 1)

  it('gives the same slab for the same seed, another for another', () => {
    expect(randomSlab(7)).toEqual(randomSlab(7))
    expect(randomSlab(7)).not.toEqual(randomSlab(8))
  })

  it.each(seeds)('slab %i has a clean outline of 200 to 800 vertices and negative voids', (seed) => {
    const slab = randomSlab(seed)
    expect(normaliseOutline(slab.outer)).toEqual({ ok: true, value: slab.outer })
    expect(slab.outer.length).toBeGreaterThanOrEqual(200)
    expect(slab.outer.length).toBeLessThanOrEqual(800)
    for (const hole of slab.holes) expect(ringAreaMm2(hole)).toBeLessThan(0)
    expect(regionAreaMm2(slab)).toBeGreaterThan(100_000)
  })

  it('slabs with and without voids both occur', () => {
    const counts = seeds.map((seed) => randomSlab(seed).holes.length)
    expect(Math.min(...counts)).toBe(0)
    expect(Math.max(...counts)).toBeGreaterThanOrEqual(3)
  })
})
