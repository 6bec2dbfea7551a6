import { describe, expect, it } from 'vitest'
import { flatPlan, flatPx, flatSlab } from '../../../../tests/support/flatPlan'
import { computePlan } from '../computePlan'
import type { Slab } from '../schema'
import { scaleAdvice } from './scaleAdvice'
import { WEAK_BANDS_MM, weakPlaces } from './weakPlaces'

function scaleOf(slab: Slab) {
  const part = computePlan(flatPlan(slab)).slabs.get('slab')?.scale
  if (part?.state !== 'ready') throw new Error('no scale')
  return part.value
}

const BOUNDS = { minX: -200, minY: -150, maxX: 2000, maxY: 750 }
const withLine = (slab: Slab): Slab => {
  if (slab.capture.kind !== 'photo') return slab
  const pointsPx = Array.from({ length: 9 }, (_, n) => flatPx(-100 + n * 250, 480))
  return {
    ...slab,
    capture: {
      ...slab.capture,
      photos: slab.capture.photos.map((photo) => ({
        ...photo,
        straightLines: [{ id: 'chalk', pointsPx, sdPx: 0.3 }],
      })),
    },
  }
}
const read: Slab['flatness'] = { kind: 'read', bowMm: 0, twistMm: 0, readingSdMm: 1 }

describe('where the photo is weak', () => {
  it('PLN-10 is sure at the datum and less sure away from it', () => {
    const { cells, stated } = weakPlaces(scaleOf(flatSlab()), BOUNDS)
    expect(cells).toHaveLength(24 * 10)
    const near = cells.find(({ minX, maxX, minY, maxY }) => minX <= 0 && maxX > 0 && minY <= 0 && maxY > 0)
    const far = cells.toSorted((a, b) => b.sdMm - a.sdMm)[0]
    expect(far?.sdMm).toBeGreaterThan(2 * (near?.sdMm ?? Number.NaN))
    expect(stated).toHaveLength(5)
    for (const { band, sdMm } of cells) {
      expect(band).toBe(WEAK_BANDS_MM.filter((least) => 2 * sdMm >= least).length)
    }
  })

  it('PLN-10 gets surer by a straightedge reading and a chalk line', () => {
    const worst = (slab: Slab): number =>
      Math.max(...weakPlaces(scaleOf(slab), BOUNDS).cells.map(({ sdMm }) => sdMm))
    const plain = worst(flatSlab())
    const flat = worst({ ...flatSlab(), flatness: read })
    expect(flat).toBeLessThan(0.95 * plain)
    expect(worst(withLine({ ...flatSlab(), flatness: read }))).toBeLessThan(flat)
  })
})

describe('what would help most', () => {
  it('PLN-10 names the offer that lowers the deviation most, and what it would come to', () => {
    const slab = flatSlab()
    const advice = scaleAdvice(slab, scaleOf(slab))
    expect(advice?.sdThenMm).toBeLessThan(0.95 * (advice?.sdNowMm ?? 0))
    expect(['straight-line', 'read-flatness']).toContain(advice?.kind)
  })

  it('PLN-10 does not advise what was done already', () => {
    const done = withLine({ ...flatSlab(), flatness: read })
    const advice = scaleAdvice(done, scaleOf(done))
    expect(['tape-distance', undefined]).toContain(advice?.kind)
  })

  it('PLN-10 names the two marks between which to tape', () => {
    const full = withLine({ ...flatSlab(), flatness: read })
    const slab = { ...full, tapedDistances: full.tapedDistances.filter(({ id }) => id !== 'ac') }
    const advice = scaleAdvice(slab, scaleOf(slab))
    if (advice !== null) expect(advice.markNames).toEqual(['A', 'C'])
    expect(scaleAdvice({ ...slab, capture: { kind: 'stations', stations: [] } }, scaleOf(slab))).toBeNull()
  })
})
