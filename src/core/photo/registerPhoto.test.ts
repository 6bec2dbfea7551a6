import { describe, expect, it } from 'vitest'
import { FOUR_MARKS, markInput, scene, seen } from '../../../tests/check-values/photo.scene'
import { type Point, slabPoint } from '../geometry'
import { planePointFromPx } from './camera'
import { laterSlabFrame, registerPhoto, slabPointFromLater, type SharedMark } from './registerPhoto'
import { undistortedFromSlab } from './rectify'
import { applyHomography } from './homography'
import { undistortPx } from './camera'
import { planePointFromSlab, pxFromSlabPoint, slabPointFromPlane } from './slabFrame'
import { slabScaleFromMarks } from './slabScale'

const HOLES: readonly Point[] = [
  [-900, 40],
  [880, -60],
  [-850, 300],
]

/** By hand: turned by a quarter, moved by (100, 50). */
const turnedPoint = ([x, y]: Point): Point => [-y + 100, x + 50]
const marksFrom = (later: (p: Point) => Point): readonly SharedMark[] =>
  HOLES.map((p, n) => {
    const [x, y] = turnedPoint(p)
    return { markId: `h${n}`, onSlab: slabPoint(x, y), inLater: later(p) }
  })

const ready = (shared: readonly SharedMark[], face: 'top' | 'underside') => {
  const found = registerPhoto(shared, face)
  if (!found.ok) throw new Error(found.problem.code)
  return found.value
}

describe('a later photo of the same slab', () => {
  it('PHO-20 lies on the first as its lasting marks do', () => {
    const found = ready(
      marksFrom((p) => p),
      'top',
    )
    expect(found.rmsMm).toBeLessThan(1e-9)
    const [x, y] = slabPointFromLater(found, [200, -300])
    expect([x, y].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([400, 250])
  })

  it('PHO-20 is mirrored for the underside, and says by its residuals when it should not have been', () => {
    const mirrored = marksFrom(([x, y]) => [x, -y])
    const found = ready(mirrored, 'underside')
    expect(found.rmsMm).toBeLessThan(1e-9)
    expect(slabPointFromLater(found, [200, 300])[0]).toBeCloseTo(400, 6)
    expect(ready(mirrored, 'top').rmsMm).toBeGreaterThan(50)
  })

  it.each(['top', 'underside'] as const)('PHO-20 gives a frame that takes %s there and back', (face) => {
    const { scale } = slabScaleFromMarks(markInput(scene({})))
    if (scale === null) throw new Error('no scale')
    const seenAs = ([x, y]: Point): Point => [x, face === 'top' ? y : -y]
    const registration = ready(marksFrom(seenAs), face)
    const frame = laterSlabFrame(scale, registration)
    const at: Point = [210, -130]
    const there = slabPointFromPlane(frame, at)
    const said = slabPointFromLater(registration, at)
    expect(there[0]).toBeCloseTo(said[0], 9)
    expect(there[1]).toBeCloseTo(said[1], 9)
    const back = planePointFromSlab(frame, there)
    expect(back[0]).toBeCloseTo(at[0], 9)
    expect(back[1]).toBeCloseTo(at[1], 9)
    const drawn = applyHomography(undistortedFromSlab(frame), there)
    const seenPx = undistortPx(frame.camera.lens, pxFromSlabPoint(frame, there))
    expect(drawn[0]).toBeCloseTo(seenPx[0], 6)
    expect(drawn[1]).toBeCloseTo(seenPx[1], 6)
  })

  it('PHO-20 shows a mark that was moved', () => {
    const shared = marksFrom((p) => p).map((mark, n) =>
      n === 2 ? { ...mark, onSlab: slabPoint(mark.onSlab[0] + 12, mark.onSlab[1]) } : mark,
    )
    const { residuals, rmsMm } = ready(shared, 'top')
    expect(rmsMm).toBeGreaterThan(3)
    expect(residuals.reduce((a, b) => (b.offMm > a.offMm ? b : a)).markId).toBe('h2')
  })

  it('PHO-20 refuses one mark, and marks too close together, by name', () => {
    const [one] = marksFrom((p) => p)
    const few = registerPhoto(one ? [one] : [], 'top')
    expect(few.ok ? '' : few.problem.code).toBe('registration-too-few-marks')
    const close = registerPhoto(
      [0, 1].map((n) => ({ markId: `c${n}`, onSlab: slabPoint(n * 100, 0), inLater: [n * 100, 0] })),
      'top',
    )
    expect(close.ok ? '' : close.problem.code).toBe('registration-marks-close')
  })

  it('PHO-20 brings an edge seen from elsewhere, by references of its own, to the same place', () => {
    const [first, later] = [scene(), scene({ tilt: 0.3, turn: -0.6, heightMm: 1800 })]
    const planeOf = (at: typeof first) => {
      const { scale } = slabScaleFromMarks(
        markInput(at, at === first ? FOUR_MARKS : HOLES.concat([[500, 300]])),
      )
      if (!scale) throw new Error('no scale')
      return (p: Point): Point => planePointFromPx(scale.camera, seen(at, p))
    }
    const [inFirst, inLater] = [planeOf(first), planeOf(later)]
    const onSlab = (p: Point) => slabPoint(...(inFirst(p) as [number, number]))
    const found = ready(
      HOLES.map((p, n) => ({ markId: `h${n}`, onSlab: onSlab(p), inLater: inLater(p) })),
      'top',
    )
    const edge: Point = [400, 380]
    const [x, y] = slabPointFromLater(found, inLater(edge))
    const [wx, wy] = onSlab(edge)
    expect(Math.hypot(x - wx, y - wy)).toBeLessThan(0.05)
  })
})
