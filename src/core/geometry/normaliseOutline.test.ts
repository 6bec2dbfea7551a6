import { describe, expect, it } from 'vitest'
import { normaliseOutline } from './normaliseOutline'
import type { Point } from './point'

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]

describe('normaliseOutline (GEO-4)', () => {
  it('leaves a clean positive outline as it is', () => {
    expect(normaliseOutline(square)).toEqual({ ok: true, value: square })
  })

  it('turns a negative outline round', () => {
    const result = normaliseOutline([...square].reverse())
    expect(result.ok && result.value).toEqual([
      [0, 10],
      [0, 0],
      [10, 0],
      [10, 10],
    ])
  })

  it('drops repeated points, near ones and the closing one', () => {
    const messy: Point[] = [
      [0, 0],
      [0, 0],
      [10, 0],
      [10, 0.0005],
      [10, 10],
      [0, 10],
      [0, 0.0002],
      [0, 0],
    ]
    expect(normaliseOutline(messy)).toEqual({ ok: true, value: square })
  })

  it.each([
    ['nothing', [], 0],
    ['one point', [[1, 1]], 1],
    [
      'one point thrice',
      [
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      1,
    ],
    [
      'two points',
      [
        [0, 0],
        [5, 5],
      ],
      2,
    ],
  ] as [string, Point[], number][])('refuses %s: too few points', (_, ring, points) => {
    expect(normaliseOutline(ring)).toEqual({
      ok: false,
      problem: { code: 'ring-too-few-points', values: { points } },
    })
  })

  it('refuses a bow-tie and names its edges by the given points they start at, the first of repeats', () => {
    const bowTie: Point[] = [
      [0, 0],
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]
    expect(normaliseOutline(bowTie)).toEqual({
      ok: false,
      problem: { code: 'ring-crosses-itself', values: { edgeA: 0, edgeB: 3 } },
    })
  })

  it('refuses points on one line, and areas below a sliver', () => {
    const noArea = { ok: false, problem: { code: 'ring-no-area', values: {} } }
    expect(
      normaliseOutline([
        [0, 0],
        [5, 5],
        [9, 9],
        [2, 2],
      ]),
    ).toEqual(noArea)
    expect(
      normaliseOutline([
        [0, 0],
        [1, 0],
        [0.5, 1],
      ]),
    ).toEqual(noArea)
  })
})
