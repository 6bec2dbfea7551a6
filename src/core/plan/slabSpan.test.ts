import { describe, expect, it } from 'vitest'
import { pxPoint } from '../geometry'
import { spanPoints, spanText } from './slabSpan'

const PHOTO = { widthPx: 3000, heightPx: 2000 }
const ring = (x0: number, y0: number, x1: number, y1: number) => [
  pxPoint(x0, y0),
  pxPoint(x1, y0),
  pxPoint(x1, y1),
  pxPoint(x0, y1),
]

describe('the span of an outline', () => {
  it('is the same text while the outline hardly changes, and another when it grows', () => {
    const datum = { fromPx: pxPoint(500, 1000), toPx: pxPoint(2500, 1000) }
    const text = spanText({ ringPx: ring(300, 600, 2700, 1500), photo: PHOTO, datum })
    expect(spanText({ ringPx: ring(305, 601, 2699, 1499), photo: PHOTO, datum })).toBe(text)
    expect(spanText({ ringPx: ring(100, 600, 2700, 1500), photo: PHOTO, datum })).not.toBe(text)
    expect(spanPoints(text ?? '')).toEqual(ring(300, 600, 2700, 1500))
  })

  it('is null without an outline', () => {
    expect(spanText({ ringPx: [], photo: PHOTO, datum: null })).toBeNull()
  })

  it('holds the very points at which the photo cuts the slab off, and no others so near the rim', () => {
    const cut = spanPoints(spanText({ ringPx: ring(0, 600, 2990, 1500), photo: PHOTO, datum: null }) ?? '')
    const atRim = cut.filter(([x]) => x < 3 || x > 2997)
    expect(atRim).toEqual([pxPoint(0, 600), pxPoint(0, 1500)])
  })
})
