import { describe, expect, it } from 'vitest'
import { scene, seen } from '../../../tests/check-values/photo.scene'
import type { Point } from '../geometry'
import type { ScaleInput } from './scaleInput'
import { slabScaleFromMarks } from './slabScale'
import { measuredLengthMm } from './uncertainty'

type Rule = readonly [Point, Point]

/** Rules lying on the slab, 3 mm thick, each two marks and one length. */
function ruleInput(at: ReturnType<typeof scene>, rules: readonly Rule[]): ScaleInput {
  return {
    marks: rules.flatMap((_, i) => [
      { id: `a${i}`, heightMm: 3 },
      { id: `b${i}`, heightMm: 3 },
    ]),
    observations: rules.flatMap(([a, b], i) => [
      { markId: `a${i}`, atPx: seen(at, a, 3) },
      { markId: `b${i}`, atPx: seen(at, b, 3) },
    ]),
    tapedDistances: rules.map(([a, b], i) => ({
      id: `rule ${i}`,
      markIds: [`a${i}`, `b${i}`] as const,
      lengthMm: Math.hypot(a[0] - b[0], a[1] - b[1]),
    })),
    boards: [],
    imageWidthPx: at.widthPx,
    imageHeightPx: at.heightPx,
    focalLength35mm: 26,
    clickSdPx: 0.5,
  }
}

const ALONG: Rule = [
  [-500, 40],
  [500, -20],
]
const ACROSS: Rule = [
  [-700, -250],
  [-690, 250],
]
const SLANTING: Rule = [
  [300, -300],
  [800, 260],
]
const PROBES: readonly Rule[] = [
  [
    [-1000, -300],
    [900, 320],
  ],
  [
    [-900, 0],
    [800, 0],
  ],
  [
    [0, -350],
    [20, 350],
  ],
]

describe('few known lengths', () => {
  it('PHO-17 one rule alone comes with a warning and with an interval that is wide and true, at any usual tilt', () => {
    for (const tilt of [0.05, 0.3, 0.6, 0.9]) {
      const at = scene({ tilt, heightMm: 1800 })
      const { scale, problems } = slabScaleFromMarks(ruleInput(at, [ALONG]))
      expect(problems.map((p) => [p.code, p.severity])).toEqual([['length-alone', 'warning']])
      if (!scale) throw new Error('no scale')
      for (const [a, b] of PROBES) {
        const { value, sd } = measuredLengthMm(scale, seen(at, a), seen(at, b), 0.5)
        const truth = Math.hypot(a[0] - b[0], a[1] - b[1])
        expect(Math.abs(value - truth)).toBeLessThan(2 * sd)
      }
      const along = measuredLengthMm(scale, seen(at, [-1000, -300]), seen(at, [900, 320]), 0.5)
      expect(along.sd / along.value).toBeGreaterThan(0.01)
    }
  })

  it('PHO-17 rules in three directions tell the tilt: the interval shrinks and stays true', () => {
    const at = scene({ tilt: 0.75, heightMm: 1800 })
    const one = slabScaleFromMarks(ruleInput(at, [ALONG])).scale
    const three = slabScaleFromMarks(ruleInput(at, [ALONG, ACROSS, SLANTING]))
    if (!one || !three.scale) throw new Error('no scale')
    expect(three.problems.map((p) => p.code)).toEqual(['tilt-assumed'])
    for (const [a, b] of PROBES) {
      const before = measuredLengthMm(one, seen(at, a), seen(at, b), 0.5)
      const after = measuredLengthMm(three.scale, seen(at, a), seen(at, b), 0.5)
      expect(after.sd).toBeLessThan(before.sd)
      expect(Math.abs(after.value - Math.hypot(a[0] - b[0], a[1] - b[1]))).toBeLessThan(2 * after.sd)
    }
  })

  it('PHO-17 four marks with a side missing still give a scale, and the loose mark is named', () => {
    const at = scene({ tilt: 0.7 })
    const corners: readonly Point[] = [
      [-800, 250],
      [800, 280],
      [820, -260],
      [-790, -240],
    ]
    const sides: readonly Rule[] = corners.map((c, i) => [c, corners[(i + 1) % 4] ?? c])
    const input: ScaleInput = {
      ...ruleInput(at, []),
      marks: corners.map((_, i) => ({ id: `m${i}`, heightMm: 0 })),
      observations: corners.map((c, i) => ({ markId: `m${i}`, atPx: seen(at, c) })),
      tapedDistances: sides.map(([a, b], i) => ({
        id: `side ${i}`,
        markIds: [`m${i}`, `m${(i + 1) % 4}`] as const,
        lengthMm: Math.hypot(a[0] - b[0], a[1] - b[1]),
      })),
    }
    const { scale, problems } = slabScaleFromMarks(input)
    expect(problems.map((p) => [p.code, p.severity])).toEqual([['distances-too-few', 'warning']])
    expect(problems[0]?.values).toMatchObject({ needed: 5, given: 4 })
    if (!scale) throw new Error('no scale')
    const { value, sd } = measuredLengthMm(scale, seen(at, [-900, 0]), seen(at, [900, 0]), 0.5)
    expect(Math.abs(value - 1800)).toBeLessThan(2 * sd)
  })
})
