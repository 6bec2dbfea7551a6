import { describe, expect, it } from 'vitest'
import type { Point } from './point'
import { reverseRing } from './reverseRing'
import { withoutSlivers } from './withoutSlivers'

const box = (size: number, areaMm2: number): Point[] => [
  [0, 0],
  [size, 0],
  [size, areaMm2 / size],
  [0, areaMm2 / size],
]

describe('withoutSlivers (GEO-6)', () => {
  it('drops faces below 1 mm² and fills such holes; exactly 1 mm² stays', () => {
    const large = { outer: box(16, 256), holes: [reverseRing(box(2, 0.5)), reverseRing(box(2, 1))] }
    const kept = withoutSlivers([
      { outer: box(1024, 0.5), holes: [] },
      large,
      { outer: box(2, 1), holes: [] },
    ])
    expect(kept).toEqual([
      { outer: large.outer, holes: [large.holes[1]] },
      { outer: box(2, 1), holes: [] },
    ])
  })
})
