import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstFreeText } from './placeText'
import { type SpreadLabel, spreadLabels } from './spreadLabels'
import { textItem } from './textItems'
import { textCorners } from './textBox'

const SEED = 8
const row = { fromMm: 0, toMm: 100, gapMm: 2 }
const label = (wantedMm: number, widthMm = 10): SpreadLabel => ({ wantedMm, widthMm })

describe('spreadLabels', () => {
  it('DRW-8 leaves labels where they are when there is room', () => {
    expect(spreadLabels([label(20), label(50)], row)).toEqual([20, 50])
  })

  it('DRW-8 parts two that meet by as much each', () => {
    // 10 wide with 2 between: 12 apart round their common middle 41.
    expect(spreadLabels([label(40), label(42)], row)).toEqual([35, 47])
  })

  it('DRW-8 keeps labels in the row, and says when they do not fit', () => {
    expect(spreadLabels([label(1), label(2)], row)).toEqual([5, 17])
    expect(spreadLabels([label(99), label(98)], row)).toEqual([83, 95])
    expect(
      spreadLabels(
        Array.from({ length: 9 }, () => label(50)),
        row,
      ),
    ).toBeNull()
    expect(spreadLabels([], row)).toEqual([])
  })

  it(`DRW-8 never overlaps, leaves the row or changes the order (seed ${SEED})`, () => {
    const labels = fc
      .array(
        fc.record({
          wantedMm: fc.double({ min: -20, max: 320, noNaN: true }),
          widthMm: fc.double({ min: 1, max: 40, noNaN: true }),
        }),
        { maxLength: 14 },
      )
      .map((list) => list.toSorted((a, b) => a.wantedMm - b.wantedMm))
    fc.assert(
      fc.property(labels, (list) => {
        const middles = spreadLabels(list, { fromMm: 0, toMm: 300, gapMm: 3 })
        const needed = list.reduce((sum, { widthMm }) => sum + widthMm + 3, -3)
        if (middles === null) {
          expect(needed).toBeGreaterThan(300)
          return
        }
        const edges = list.map(
          ({ widthMm }, k) => [middles[k]! - widthMm / 2, middles[k]! + widthMm / 2] as const,
        )
        edges.forEach(([left, right], k) => {
          expect(left).toBeGreaterThanOrEqual(-1e-6)
          expect(right).toBeLessThanOrEqual(300 + 1e-6)
          if (k > 0) expect(left - edges[k - 1]![1]).toBeGreaterThanOrEqual(3 - 1e-6)
        })
      }),
      { seed: SEED, numRuns: 500 },
    )
  })
})

describe('firstFreeText', () => {
  it('DRW-8 takes the first free place, and none when all are taken', () => {
    const style = { sizeMm: 4 }
    const [first, second] = [textItem('oak', [10, 10], style), textItem('oak', [10, 30], style)]
    const taken = [textCorners(textItem('ash', [12, 11], style))]
    const sheet = { xMm: 0, yMm: 0, widthMm: 100, heightMm: 100 }
    expect(firstFreeText([first, second], taken, sheet)).toBe(second)
    expect(firstFreeText([first], taken, sheet)).toBeNull()
    expect(firstFreeText([first, second], [], { ...sheet, yMm: 20 })).toBe(second)
  })
})
