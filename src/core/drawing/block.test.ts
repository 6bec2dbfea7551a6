import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Block, columnsBlock, flowBlocks, stackBlocks } from './block'

const SEED = 12
const block = (heightMm: number, keepWithNext = false, spaceBeforeMm = 2): Block => ({
  heightMm,
  spaceBeforeMm,
  keepWithNext,
  draw: ([x, y]) => [{ kind: 'circle', centre: [x, y], radiusMm: heightMm, stroke: null, fill: null }],
})
const heights = (pages: readonly (readonly Block[])[]): readonly (readonly number[])[] =>
  pages.map((page) => page.map(({ heightMm }) => heightMm))

describe('flowBlocks', () => {
  it('DRW-12 fills pages in order and leaves out the air above a page', () => {
    // 10 + 2 + 10 = 22; the third would make 34.
    expect(heights(flowBlocks([block(10), block(10), block(10)], 22, 22))).toEqual([[10, 10], [10]])
    expect(heights(flowBlocks([block(10), block(10)], 5, 22))).toEqual([[], [10, 10]])
  })

  it('DRW-12 keeps a heading with what follows', () => {
    expect(heights(flowBlocks([block(10), block(4, true), block(10)], 20, 30))).toEqual([[10], [4, 10]])
  })

  it(`DRW-12 loses nothing and overfills no page (seed ${SEED})`, () => {
    const blocks = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 20 }), fc.boolean()).map(([height, keep]) => block(height, keep)),
      { maxLength: 4 },
    )
    fc.assert(
      fc.property(fc.array(blocks, { maxLength: 10 }), (groups) => {
        const all = groups.flatMap((group) => [...group, block(5)])
        const pages = flowBlocks(all, 60, 100)
        expect(pages.flat()).toEqual(all)
        pages.forEach((page, k) => {
          const used = page.reduce((sum, { heightMm }, n) => sum + heightMm + (n === 0 ? 0 : 2), 0)
          expect(used).toBeLessThanOrEqual(k === 0 ? 60 : 100)
        })
      }),
      { seed: SEED },
    )
  })
})

describe('stackBlocks', () => {
  it('DRW-12 sets blocks below one another, columns beside', () => {
    const columns = columnsBlock(
      [
        { leftMm: 0, blocks: [block(4), block(6)] },
        { leftMm: 30, blocks: [block(9)] },
      ],
      3,
    )
    expect(columns.heightMm).toBe(12)
    const places = stackBlocks([block(5), columns], { xMm: 10, yMm: 20 }).map((item) =>
      item.kind === 'circle' ? item.centre : null,
    )
    expect(places).toEqual([
      [10, 20],
      [10, 28],
      [10, 34],
      [40, 28],
    ])
  })
})
