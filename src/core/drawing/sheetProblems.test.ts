import { describe, expect, it } from 'vitest'
import { paperSize } from './paperSize'
import type { DrawItem } from './sheet'
import { sheetProblems } from './sheetProblems'
import { textBox } from './textBox'
import { centredText, textItem } from './textItems'

const kindsOf = (items: readonly DrawItem[]): readonly string[] =>
  sheetProblems({ title: 'Sheet', paper: 'a4', orientation: 'portrait', ...paperSize('a4'), items }).map(
    ({ kind }) => kind,
  )

const oak = textItem('oak', [50, 50], { sizeMm: 4 })
const across: DrawItem = {
  kind: 'polyline',
  points: [
    [40, 49],
    [80, 49],
  ],
  stroke: { widthMm: 0.2 },
}

describe('sheetProblems', () => {
  it('DRW-4 has nothing to say of a sound sheet', () => {
    expect(
      kindsOf([
        oak,
        textItem('ash', [50, 56], { sizeMm: 4 }),
        {
          ...across,
          points: [
            [40, 60],
            [80, 60],
          ],
        },
      ]),
    ).toEqual([])
  })

  it('DRW-4 names texts that overlap, also when both are turned', () => {
    expect(kindsOf([oak, textItem('ash', [54, 52], { sizeMm: 4 })])).toEqual(['texts-overlap'])
    const turned = { sizeMm: 4, angleRad: Math.PI / 4 }
    expect(kindsOf([textItem('oak', [50, 50], turned), textItem('ash', [52, 52], turned)])).toEqual([
      'texts-overlap',
    ])
    // Their upright boxes meet, the letters do not: 6 mm apart across the writing.
    expect(kindsOf([textItem('oak', [50, 50], turned), textItem('ash', [54.3, 45.7], turned)])).toEqual([])
  })

  it('DRW-4 names what is clipped, too wide, or too small to read', () => {
    expect(kindsOf([textItem('oak', [202, 50], { sizeMm: 4 })])).toEqual(['text-off-the-page'])
    expect(kindsOf([textItem('oak', [50, 8], { sizeMm: 4 })])).toEqual(['text-off-the-page'])
    expect(kindsOf([textItem('oak', [50, 50], { sizeMm: 4, maxWidthMm: 5 })])).toEqual([
      'text-wider-than-its-room',
    ])
    expect(kindsOf([textItem('oak', [50, 50], { sizeMm: 2.5 })])).toEqual(['text-too-small'])
    expect(
      kindsOf([
        {
          ...across,
          points: [
            [-3, 20],
            [20, 20],
          ],
        },
      ]),
    ).toEqual(['line-off-the-page'])
  })

  it('DRW-4 names a line through letters, unless a ground was laid between them', () => {
    expect(kindsOf([across, oak])).toEqual(['line-through-text'])
    expect(kindsOf([oak, across])).toEqual(['line-through-text'])
    const plated = textItem('oak', [50, 50], { sizeMm: 4, plate: true })
    expect(kindsOf([across, plated])).toEqual([])
    expect(kindsOf([plated, across])).toEqual(['line-through-text'])
    const disc: DrawItem = { kind: 'circle', centre: [55, 49], radiusMm: 4, stroke: null, fill: 'black' }
    const number = centredText('4', [55, 49], { sizeMm: 4, reversed: true })
    expect(kindsOf([across, disc, number])).toEqual([])
    expect(kindsOf([disc, across, number])).toEqual(['line-through-text'])
  })

  it('DRW-4 takes a text to be as large as its ink', () => {
    // "oak" at 10 mm, from the font: o 0.542, a 0.504, k 0.495 em; ink from 0.734 em over to 0.224 em under the baseline.
    const box = textBox(textItem('oak', [50, 50], { sizeMm: 10, anchor: 'end' }))
    expect(box.widthMm).toBeCloseTo(15.41, 9)
    expect(box.xMm).toBeCloseTo(50 - 15.41, 9)
    expect(box.yMm).toBeCloseTo(50 - 7.34, 9)
    expect(box.heightMm).toBeCloseTo(9.58, 9)
  })
})
