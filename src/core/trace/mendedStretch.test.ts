import { describe, expect, it } from 'vitest'
import { pxPoint, ringAreaMm2, type PxPoint } from '../geometry'
import { redrawnStretch, straightenedStretch } from './mendedStretch'

/** 100 by 60, with a tooth of 10 by 10 on its upper side. */
const toothed: readonly PxPoint[] = [
  [0, 0],
  [40, 0],
  [40, -10],
  [50, -10],
  [50, 0],
  [100, 0],
  [100, 60],
  [0, 60],
].map(([x = 0, y = 0]) => pxPoint(x, y))

describe('redrawnStretch', () => {
  it('TRC-12 puts a path in the place of the nearer way, in either direction', () => {
    const path = [pxPoint(30, 1), pxPoint(45, 5), pxPoint(60, 1)]
    for (const drawn of [path, path.toReversed()]) {
      const mended = redrawnStretch(toothed, drawn)
      expect(mended.ok && mended.value).toEqual(
        expect.arrayContaining([pxPoint(30, 0), pxPoint(45, 5), pxPoint(60, 0), pxPoint(100, 60)]),
      )
      // A triangle of 30 by 5 is lost from the rectangle, and the tooth is gone.
      expect(mended.ok && ringAreaMm2(mended.value)).toBe(6000 - 75)
    }
  })

  it('TRC-12 takes the longer way where the path runs along it', () => {
    const path = [pxPoint(0, 30), pxPoint(0, 65), pxPoint(100, 65), pxPoint(100, 0), pxPoint(60, 0)]
    const mended = redrawnStretch(toothed, path)
    expect(mended.ok && ringAreaMm2(mended.value)).toBe(6100 + 500)
  })

  it('TRC-12 refuses a path that crosses the rest of the line', () => {
    const mended = redrawnStretch(toothed, [pxPoint(10, 0), pxPoint(-5, 20), pxPoint(30, 5), pxPoint(80, 0)])
    expect(mended.ok ? 'mended' : mended.problem.code).toBe('ring-crosses-itself')
  })
})

describe('straightenedStretch', () => {
  it('TRC-12 cuts the tooth off, and nothing else', () => {
    const mended = straightenedStretch(toothed, pxPoint(40, 0), pxPoint(50, 0))
    expect(mended.ok && ringAreaMm2(mended.value)).toBe(6000)
  })

  it('TRC-12 two places that are one leave the line as it is', () => {
    const mended = straightenedStretch(toothed, pxPoint(20, -3), pxPoint(20, -4))
    expect(mended.ok && ringAreaMm2(mended.value)).toBe(6100)
  })
})
