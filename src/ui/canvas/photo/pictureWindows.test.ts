import { describe, expect, it } from 'vitest'
import { cropForView, isWithin, wholeWindow, windowForView } from './pictureWindows'

const photo = { widthPx: 4096, heightPx: 3072 }
const size = { width: 1000, height: 800 }

describe('cropForView', () => {
  it('asks for nothing while the preview is sharp enough', () => {
    expect(cropForView(photo, { scale: 0.24, x: 0, y: 0 }, size, 2)).toBeNull()
  })

  it('asks for the visible part, one pixel for each one on the screen', () => {
    // by hand: at scale 0.8 the screen shows 1250 × 1000 photo px from (500, 250)
    expect(cropForView(photo, { scale: 0.8, x: -400, y: -200 }, size, 1)).toEqual({
      area: { minX: 500, minY: 250, maxX: 1750, maxY: 1250 },
      outWidthPx: 1000,
      outHeightPx: 800,
    })
  })

  it('never asks for more pixels than the photo has', () => {
    const crop = cropForView(photo, { scale: 8, x: 0, y: 0 }, size, 2)
    expect(crop).toEqual({
      area: { minX: 0, minY: 0, maxX: 125, maxY: 100 },
      outWidthPx: 125,
      outHeightPx: 100,
    })
  })

  it('asks for nothing when the photo is off screen', () => {
    expect(cropForView(photo, { scale: 1, x: 2000, y: 0 }, size, 1)).toBeNull()
  })
})

describe('windows from above', () => {
  const slab = { minX: 0, minY: -500, maxX: 2800, maxY: 400 }

  it('shows the whole slab with some surroundings in at most 2048 px', () => {
    const { minXMm, maxXMm, minYMm, maxYMm, mmPerPx } = wholeWindow(slab)
    expect([minXMm, maxXMm, minYMm, maxYMm]).toEqual([-168, 2968, -668, 568])
    expect((maxXMm - minXMm) / mmPerPx).toBeCloseTo(2048, 6)
  })

  it('asks for the visible part when zoomed in, no finer than the photo', () => {
    const camera = { scale: 2, x: -1000, y: 400 }
    expect(windowForView(slab, camera, size, 1, 1.25)).toEqual({
      minXMm: 500,
      minYMm: -200,
      maxXMm: 1000,
      maxYMm: 200,
      mmPerPx: 0.8,
    })
    expect(windowForView(slab, { scale: 0.3, x: 0, y: 200 }, size, 1, 1.25)).toBeNull()
  })

  it('knows when one box is within another', () => {
    expect(isWithin({ minX: 1, minY: 1, maxX: 2, maxY: 2 }, { minX: 0, minY: 1, maxX: 2, maxY: 3 })).toBe(
      true,
    )
    expect(isWithin({ minX: 1, minY: 1, maxX: 2.1, maxY: 2 }, { minX: 0, minY: 1, maxX: 2, maxY: 3 })).toBe(
      false,
    )
  })
})
