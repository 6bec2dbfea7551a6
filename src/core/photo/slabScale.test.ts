import { describe, expect, it } from 'vitest'
import { FOUR_MARKS, markInput, middleOf, scene, seen } from '../../../tests/check-values/photo.scene'
import type { Point } from '../geometry'
import { planePointFromPx } from './camera'
import { slabFrame, slabPointFromPx } from './slabFrame'
import type { ScaleInput } from './scaleInput'
import { planePointOf, slabScaleFromMarks } from './slabScale'
import type { SlabScale } from './scaleOfPhoto'

const scaleOf = (input: ScaleInput): SlabScale => {
  const { scale, problems } = slabScaleFromMarks(input)
  if (!scale) throw new Error(JSON.stringify(problems))
  return scale
}

const PROBES: readonly Point[] = [
  [-1100, 450],
  [1100, 430],
  [1080, -480],
  [-1090, -470],
  [0, 0],
]

/** Worst error of the ten lengths between the probes, mm. */
function worstLengthError(scale: SlabScale, at: ReturnType<typeof scene>): number {
  const solved = PROBES.map((p) => planePointOf(scale, seen(at, p)))
  let worst = 0
  PROBES.forEach((p, i) => {
    PROBES.forEach((q, j) => {
      const [a, b] = [solved[i] ?? [0, 0], solved[j] ?? [0, 0]]
      worst = Math.max(
        worst,
        Math.abs(Math.hypot(a[0] - b[0], a[1] - b[1]) - Math.hypot(p[0] - q[0], p[1] - q[1])),
      )
    })
  })
  return worst
}

describe('slabScaleFromMarks', () => {
  it('PHO-7 is exact on an exact photo: four marks and six distances, at any tilt and turn', () => {
    for (const tilt of [0, 0.02, 0.4, 0.8, 1]) {
      for (const turn of [-0.5, 0, 2, 3.1]) {
        const at = scene({ tilt, turn, heightMm: 2200 })
        expect(worstLengthError(scaleOf(markInput(at)), at)).toBeLessThan(0.01)
      }
    }
  })

  it('PHO-7 gives back the camera: height over the slab, tilt and focal length', () => {
    const at = scene({ tilt: 0.8 })
    const scale = scaleOf({ ...markInput(at), focalLength35mm: null })
    expect(scale.cameraHeightMm).toBeCloseTo(1500, 1)
    expect(scale.tiltRad).toBeCloseTo(0.8, 5)
    expect(scale.focalLength35mm).toBeCloseTo(26, 2)
  })

  it('PHO-4 corrects marks that stand above the face by their height; ignoring 6 mm costs 0.8 % of area', () => {
    const at = scene({ heightMm: 1500 })
    const input = markInput(at, FOUR_MARKS, 6)
    expect(worstLengthError(scaleOf(input), at)).toBeLessThan(0.01)
    const ignored = scaleOf({ ...input, marks: input.marks.map((m) => ({ ...m, heightMm: 0 })) })
    const side = (scale: SlabScale): number => {
      const [p, q] = [planePointOf(scale, seen(at, [-500, 0])), planePointOf(scale, seen(at, [500, 0]))]
      return Math.hypot(p[0] - q[0], p[1] - q[1]) / 1000
    }
    // Similar triangles: the lens is 1500 mm above the face and 1494 above the marks.
    expect(side(ignored) ** 2).toBeCloseTo((1494 / 1500) ** 2, 4)
  })

  it('PHO-4 takes marks of different heights together', () => {
    const at = scene({ tilt: 0.6 })
    const heights = [0, 6, 12, 3]
    const marks = FOUR_MARKS.map((_, i) => ({ id: `m${String(i + 1)}`, heightMm: heights[i] ?? 0 }))
    const exact = markInput(at)
    const input: ScaleInput = {
      ...exact,
      marks,
      observations: FOUR_MARKS.map((p, i) => ({
        markId: `m${String(i + 1)}`,
        atPx: seen(at, p, heights[i] ?? 0),
      })),
      // A tape runs from mark to mark, up and down with them.
      tapedDistances: exact.tapedDistances.map((d) => {
        const rise =
          (heights[Number(d.markIds[0].slice(1)) - 1] ?? 0) -
          (heights[Number(d.markIds[1].slice(1)) - 1] ?? 0)
        return { ...d, lengthMm: Math.hypot(d.lengthMm, rise) }
      }),
    }
    expect(worstLengthError(scaleOf(input), at)).toBeLessThan(0.02)
  })

  it('PHO-9 takes a board as four marks with known sides, clicked either way round', () => {
    const at = scene({ tilt: 0.7 })
    const corners: readonly Point[] = [
      [-600, 300],
      [600, 300],
      [600, -300],
      [-600, -300],
    ]
    const input: ScaleInput = {
      ...markInput(at, corners, 6),
      tapedDistances: [],
      boards: [{ id: 'b', cornerIds: ['m1', 'm2', 'm3', 'm4'], lengthMm: 1200, widthMm: 600 }],
    }
    expect(worstLengthError(scaleOf(input), at)).toBeLessThan(0.05)
    const reversed: ScaleInput = {
      ...input,
      boards: [{ id: 'b', cornerIds: ['m2', 'm1', 'm4', 'm3'], lengthMm: 1200, widthMm: 600 }],
    }
    expect(worstLengthError(scaleOf(reversed), at)).toBeLessThan(0.05)
  })

  it('PHO-9 the plane is never mirrored: it turns as the photo does', () => {
    const at = scene()
    const scale = scaleOf(markInput(at))
    const [a, b, c] = [
      planePointOf(scale, seen(at, [0, 0])),
      planePointOf(scale, seen(at, [500, 0])),
      planePointOf(scale, seen(at, [0, 300])),
    ]
    expect((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])).toBeGreaterThan(0)
  })

  it('PHO-11 the slab frame keeps an exact picture where it is when a redundant exact reference is added', () => {
    const at = scene({ tilt: 0.7 })
    const marks: readonly Point[] = [...FOUR_MARKS, [100, 40], [-300, -250]]
    const six = markInput(at, marks)
    const known = new Set(['m1', 'm2', 'm3', 'm4'])
    const four: ScaleInput = {
      ...six,
      marks: six.marks.filter((m) => known.has(m.id)),
      tapedDistances: six.tapedDistances.filter((d) => d.markIds.every((id) => known.has(id))),
      observations: six.observations.filter((o) => known.has(o.markId)),
    }
    const datum = { fromPx: seen(at, [-1000, 100]), toPx: seen(at, [1000, 120]) }
    const [before, after] = [slabFrame(scaleOf(four), datum), slabFrame(scaleOf(six), datum)]
    if (!before.ok || !after.ok) throw new Error('no frame')
    for (const probe of PROBES) {
      const [p, q] = [
        slabPointFromPx(before.value, seen(at, probe)),
        slabPointFromPx(after.value, seen(at, probe)),
      ]
      expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThan(0.01)
    }
    const origin = slabPointFromPx(after.value, datum.fromPx)
    expect(Math.hypot(origin[0], origin[1])).toBeLessThan(1e-9)
  })

  it('PHO-10 names reference problems: none, too few, crossed, mirrored, too small, on a line', () => {
    const at = scene()
    const codes = (input: ScaleInput): string[] =>
      slabScaleFromMarks(input).problems.flatMap((p) => (p.severity === 'blocker' ? [p.code] : []))
    const good = markInput(at)
    expect(codes(good)).toEqual([])
    expect(codes({ ...good, tapedDistances: [] })).toEqual(['reference-missing'])
    expect(codes({ ...good, observations: good.observations.slice(0, 1) })).toEqual([
      'reference-too-few-marks',
    ])
    const swapped = good.observations.map((o, i) => ({
      ...o,
      atPx: good.observations[[1, 0, 2, 3][i] ?? 0]?.atPx ?? o.atPx,
    }))
    expect(codes({ ...good, observations: swapped })).toEqual(['reference-mirrored'])
    const board = { id: 'b', cornerIds: ['m1', 'm3', 'm2', 'm4'] as const, lengthMm: 1700, widthMm: 600 }
    expect(codes({ ...good, tapedDistances: [], boards: [board] })).toEqual(['reference-crossed'])
    const tiny = FOUR_MARKS.map(([x, y]): Point => [x / 60, y / 60])
    expect(codes(markInput(at, tiny))).toEqual(['reference-too-small'])
    const line: readonly Point[] = [
      [-800, 0],
      [0, 0],
      [700, 0],
      [300, 300],
    ]
    expect(codes(markInput(at, line))).toEqual(['reference-collinear'])
  })

  it('PHO-10 names a misread tape when more than one distance is to spare', () => {
    const at = scene({ tilt: 0.7 })
    const marks: readonly Point[] = [...FOUR_MARKS, [100, 40]]
    const exact = markInput(at, marks)
    for (const wrong of exact.tapedDistances) {
      const tapedDistances = exact.tapedDistances.map((d) =>
        d === wrong ? { ...d, lengthMm: d.lengthMm + 25 } : d,
      )
      const told = slabScaleFromMarks({ ...exact, tapedDistances }).problems
      expect(told.map((p) => [p.code, p.distanceIds])).toEqual([['distance-disagrees', [wrong.id]]])
      expect(Number(told[0]?.values['solvedMm'])).toBeCloseTo(wrong.lengthMm, 0)
    }
  })

  it('PHO-10 has a misread tape among the named ones when four marks have one distance to spare', () => {
    const exact = markInput(scene({ tilt: 0.7 }))
    for (const wrong of exact.tapedDistances) {
      const tapedDistances = exact.tapedDistances.map((d) =>
        d === wrong ? { ...d, lengthMm: d.lengthMm - 25 } : d,
      )
      const told = slabScaleFromMarks({ ...exact, tapedDistances }).problems.filter((p) =>
        p.code.includes('disagree'),
      )
      expect(told).toHaveLength(1)
      expect(told[0]?.distanceIds).toContain(wrong.id)
    }
    expect(slabScaleFromMarks(exact).problems).toEqual([])
  })

  it('PHO-3 pixels above the horizon have no place on the slab', () => {
    const at = scene({ tilt: 1.35 })
    expect(planePointFromPx(at.camera, [1500, 0])).toEqual([Number.NaN, Number.NaN])
    expect(middleOf(at).every(Number.isFinite)).toBe(true)
  })
})
