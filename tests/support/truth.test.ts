import { describe, expect, it } from 'vitest'
import { type PhotoName, readPhotoBytes, readTruth, truthPlaneToPhotoPx } from './truth'

const PHOTOS: readonly PhotoName[] = ['d1', 'd2', 'd3', 'd4']

const shoelaceMm2 = (ring: readonly (readonly [number, number])[]): number => {
  let sum = 0
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y]
    sum += x * nextY - nextX * y
  })
  return Math.abs(sum) / 2
}

describe.each(PHOTOS)('truth of photo %s', (name) => {
  const truth = readTruth(name)

  it('projects every outline vertex onto its stated pixel through homography and lens', () => {
    const worstPx = truth.slab.top_outline_mm.reduce((worst, [xMm, yMm], i) => {
      const [xPx, yPx] = truthPlaneToPhotoPx(truth, xMm, yMm)
      const [wantX, wantY] = truth.slab.top_outline_px[i] ?? [NaN, NaN]
      return Math.max(worst, Math.hypot(xPx - wantX, yPx - wantY))
    }, 0)
    expect(worstPx).toBeLessThan(0.01)
  })

  it('states the area that its outline and voids have', () => {
    const grossMm2 = shoelaceMm2(truth.slab.top_outline_mm)
    expect(Math.abs(grossMm2 / truth.slab.top_area_gross_mm2 - 1)).toBeLessThan(1e-5)
    truth.slab.voids.forEach((hole) => {
      expect(Math.abs(shoelaceMm2(hole.top_polygon_mm) / hole.top_area_mm2 - 1)).toBeLessThan(1e-3)
    })
  })

  it('comes with a JPEG', () => {
    expect([...readPhotoBytes(name).subarray(0, 2)]).toEqual([0xff, 0xd8])
  })
})
