import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { centredView, onSheet, pickScale, scaleText } from './drawingScale'

const SEED = 5455

describe('pickScale', () => {
  it('DRW-5 takes the largest usual scale that fits', () => {
    // 2400 mm into 260 mm is 1:9.23, so 1:10 fits and 1:7.5 does not; 3/4 in to the foot (1:16) for 15.4.
    const slab = { widthMm: 2400, heightMm: 900 }
    expect(pickScale(slab, { widthMm: 260, heightMm: 150 }, 'mm')).toEqual({ ratio: 10 })
    expect(pickScale(slab, { widthMm: 260, heightMm: 150 }, 'inch')).toEqual({ ratio: 12 })
    expect(pickScale(slab, { widthMm: 156, heightMm: 150 }, 'inch')).toEqual({ ratio: 16 })
    expect(scaleText({ ratio: 12.5 })).toBe('1:12.5')
  })

  it('DRW-5 has the scales of reduction that ISO 5455 recommends down to 1:200', () => {
    // ISO 5455:1979, table of recommended scales: 1:2, 1:5, 1:10, 1:20, 1:50, 1:100, 1:200.
    for (const ratio of [2, 5, 10, 20, 50, 100, 200]) {
      expect(pickScale({ widthMm: ratio, heightMm: 0 }, { widthMm: 1, heightMm: 1 }, 'mm')).toEqual({ ratio })
    }
  })

  it('DRW-5 says so when nothing usual fits, and refuses what has no room', () => {
    expect(pickScale({ widthMm: 1e6, heightMm: 1 }, { widthMm: 100, heightMm: 100 }, 'mm')).toBeNull()
    expect(() => pickScale({ widthMm: 1, heightMm: 1 }, { widthMm: 0, heightMm: 1 }, 'mm')).toThrow('room')
  })

  it(`DRW-5 always fits (seed ${SEED})`, () => {
    const size = fc.double({ min: 1, max: 9000, noNaN: true })
    fc.assert(
      fc.property(
        size,
        size,
        fc.constantFrom('mm' as const, 'inch' as const),
        (widthMm, heightMm, system) => {
          const scale = pickScale({ widthMm, heightMm }, { widthMm: 180, heightMm: 120 }, system)
          expect(widthMm / scale!.ratio).toBeLessThanOrEqual(180)
          expect(heightMm / scale!.ratio).toBeLessThanOrEqual(120)
        },
      ),
      { seed: SEED },
    )
  })
})

describe('centredView', () => {
  it('DRW-6 sets the middle of the wood in the middle of its box, to scale', () => {
    const box = { xMm: 10, yMm: 20, widthMm: 200, heightMm: 100 }
    const view = centredView({ ratio: 10 }, { minX: -200, minY: -100, maxX: 1800, maxY: 700 }, box)
    // Middle of the wood (800, 300) → middle of the box (110, 70); 1000 mm along is 100 mm of paper.
    expect(onSheet(view, [800, 300])).toEqual([110, 70])
    expect(onSheet(view, [1800, 300])).toEqual([210, 70])
  })
})
