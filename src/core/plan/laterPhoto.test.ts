import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatPx, flatSlab } from '../../../tests/support/flatPlan'
import { pxPoint, type PxPoint, ringBounds } from '../geometry'
import { slabPointFromPx } from '../photo'
import { computePlan } from './computePlan'
import type { Photo, Plan, Slab, Trace } from './schema'

const SEED = 20261125

/** How a later photo sees a place of the slab (mm from mark A): turned, moved, nearer, and mirrored from below. */
type Seen = (xMm: number, yMm: number) => PxPoint
const seenAs =
  (face: Photo['face'], { turnRad = 0.2, pxPerMm = 0.8, x = 700, y = 600 } = {}): Seen =>
  (xMm, yMm) => {
    const across = face === 'top' ? yMm : 600 - yMm
    const [cos, sin] = [Math.cos(turnRad) * pxPerMm, Math.sin(turnRad) * pxPerMm]
    return pxPoint(x + cos * xMm - sin * across, y + sin * xMm + cos * across)
  }

const MARKS = [
  ['a', 0, 0],
  ['b', 1800, 0],
  ['c', 1800, 600],
  ['d', 0, 600],
] as const

const box = (seen: Seen, by: number): readonly PxPoint[] => [
  seen(-200 + by, -150 + by),
  seen(2000 - by, -150 + by),
  seen(2000 - by, 750 - by),
  seen(-200 + by, 750 - by),
]

interface Later {
  readonly face: Photo['face']
  readonly seen: Seen
  readonly marks?: number
  readonly traces: readonly { readonly meaning: Trace['meaning']; readonly ringPx: readonly PxPoint[] }[]
}

function withLater(slab: Slab, { face, seen, marks = 4, traces }: Later): Slab {
  if (slab.capture.kind !== 'photo') throw new Error('no photo')
  const [first] = slab.capture.photos
  if (first === undefined) throw new Error('no photo')
  const observations = MARKS.slice(0, marks).map(([markId, x, y]) => ({
    markId,
    atPx: seen(x, y),
    sdPx: null,
    refinement: { kind: 'none' as const },
  }))
  const later: Photo = { ...first, id: 'later', fileName: 'cleaned.jpg', face, observations }
  const own = traces.map((trace, n): Trace => {
    return { ...trace, id: `later${n}`, photoId: 'later', origin: { kind: 'hand' } }
  })
  const capture = { ...slab.capture, photos: [first, later], traces: [...slab.capture.traces, ...own] }
  return { ...slab, capture }
}

const outlined = (face: Photo['face'], by: number, seen = seenAs(face)): Later => ({
  face,
  seen,
  traces: [{ meaning: { kind: 'outline' }, ringPx: box(seen, by) }],
})

function resultOf(plan: Plan) {
  const result = computePlan(plan)
  const slab = result.slabs.get('slab')
  const option = result.options.get('option')
  if (slab === undefined || option === undefined) throw new Error('no result')
  const shape = slab.shape.state === 'ready' ? slab.shape.value : null
  return { slab, option, shape, codes: result.issues.map(({ code }) => code) }
}

const TABLE = flatOption(1000, 400, { xMm: 300, yMm: 100 })

// By hand: the slab is a box from (-200, -150) to (2000, 750); the later outline stands the same amount inside it.
describe('a later photo in the plan', () => {
  it.each(['top', 'underside'] as const)(
    'PLN-14 the outline on a photo of the %s replaces the older',
    (face) => {
      const { shape, codes } = resultOf(flatPlan(withLater(flatSlab(), outlined(face, 20)), TABLE))
      const { minX, minY, maxX, maxY } = ringBounds(shape?.outline ?? [])
      for (const [found, expected] of [
        [minX, -180],
        [minY, -130],
        [maxX, 1980],
        [maxY, 730],
      ] as const)
        expect(found).toBeCloseTo(expected, 1)
      expect(codes.filter((code) => code.startsWith('later'))).toEqual([])
    },
  )

  it('PLN-14 an underside lies the right way round: what is near one end from above is there from below', () => {
    const seen = seenAs('underside')
    const hole = [seen(1500, 100), seen(1600, 100), seen(1600, 150), seen(1500, 150)]
    const traces: Later['traces'] = [
      { meaning: { kind: 'void', depth: { kind: 'through' } }, ringPx: hole },
      { meaning: { kind: 'void', depth: { kind: 'partial', depthMm: 10 } }, ringPx: hole },
    ]
    const { shape } = resultOf(flatPlan(withLater(flatSlab(), { face: 'underside', seen, traces }), TABLE))
    expect(shape?.voids).toHaveLength(1)
    const { minX, minY } = ringBounds(shape?.voids[0]?.ring ?? [])
    expect(minX).toBeCloseTo(1500, 1)
    expect(minY).toBeCloseTo(100, 1)
  })

  it('PLN-14 takes four marks; until then the first photo stands and the photo is named', () => {
    const later = { ...outlined('top', 20), marks: 3 }
    const before = resultOf(flatPlan(flatSlab(), TABLE))
    const { shape, codes, slab } = resultOf(flatPlan(withLater(flatSlab(), later), TABLE))
    expect(codes).toContain('later-photo-few-marks')
    expect(slab.laterPhotos.get('later')?.state).toBe('blocked')
    expect(shape).toEqual(before.shape)
  })

  it('PLN-14 says when the marks do not fit: the underside that passes for the top', () => {
    const later = { ...outlined('underside', 20), face: 'top' as const }
    const { codes } = resultOf(flatPlan(withLater(flatSlab(), later), TABLE))
    expect(codes).toContain('later-photo-off')
  })

  it('PLN-14 footprint, cuts and pieces stay as they are; only the edge is new (seeded)', () => {
    const before = flatPlan(flatSlab(), TABLE)
    const old = resultOf(before)
    const view = fc.record({
      by: fc.integer({ min: 1, max: 60 }),
      face: fc.constantFrom('top' as const, 'underside' as const),
      turnRad: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
      pxPerMm: fc.double({ min: 0.5, max: 1.1, noNaN: true }),
    })
    const holds = fc.property(view, ({ by, face, turnRad, pxPerMm }) => {
      const slab = withLater(flatSlab(), outlined(face, by, seenAs(face, { turnRad, pxPerMm })))
      const plan = flatPlan(slab, TABLE)
      const { option, shape, slab: found } = resultOf(plan)
      expect(plan.options).toEqual(before.options)
      expect(option.footprint).toEqual(old.option.footprint)
      expect(found.scale).toEqual(old.slab.scale)
      expect(shape?.voids).toEqual(old.shape?.voids)
      expect(shape?.lengthMm).toBeCloseTo(2200 - 2 * by, 0)
      expect(shape?.widthMm).toBeCloseTo(900 - 2 * by, 0)
    })
    fc.assert(holds, { seed: SEED, numRuns: 25 })
  })

  it('PLN-14 a pixel of either photo names the same wood', () => {
    const seen = seenAs('underside')
    const { slab } = resultOf(flatPlan(withLater(flatSlab(), outlined('underside', 20, seen)), TABLE))
    const later = slab.laterPhotos.get('later')
    if (slab.scale.state !== 'ready' || later?.state !== 'ready') throw new Error('not ready')
    const one = slabPointFromPx(slab.scale.value.frame, flatPx(777, 222))
    const other = slabPointFromPx(later.value.frame, seen(777, 222))
    expect(other[0]).toBeCloseTo(one[0], 1)
    expect(other[1]).toBeCloseTo(one[1], 1)
    expect(later.value.rmsMm).toBeLessThan(0.1)
  })
})
