import { describe, expect, it } from 'vitest'
import { tileGrid } from './tileGrid'

describe('tileGrid', () => {
  it('DRW-14 holds every place in some tile, and neighbours share the overlap', () => {
    const bounds = { minX: -200, minY: -150, maxX: 2000, maxY: 750 }
    const size = { widthMm: 210, heightMm: 160 }
    const tiles = tileGrid(bounds, size, 15)
    // By hand: steps of 195 and 145 mm; (2200 − 15) / 195 = 11.2 and (900 − 15) / 145 = 6.1, both up.
    expect(tiles).toHaveLength(12 * 7)
    for (let x = bounds.minX; x <= bounds.maxX; x += 13) {
      for (let y = bounds.minY; y <= bounds.maxY; y += 13) {
        const holders = tiles.filter(
          ({ leftMm, topMm }) =>
            x >= leftMm && x <= leftMm + size.widthMm && y >= topMm && y <= topMm + size.heightMm,
        )
        expect(holders.length).toBeGreaterThan(0)
      }
    }
    expect((tiles[0]?.leftMm ?? 0) + size.widthMm - (tiles[1]?.leftMm ?? 0)).toBe(15)
  })

  it('DRW-14 needs one tile for what fits on it', () => {
    expect(tileGrid({ minX: 0, minY: 0, maxX: 100, maxY: 100 }, { widthMm: 100, heightMm: 100 }, 15)).toEqual(
      [{ column: 0, row: 0, leftMm: 0, topMm: 0 }],
    )
  })
})
