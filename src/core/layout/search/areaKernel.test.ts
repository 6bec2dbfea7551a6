import { describe, expect, it } from 'vitest'
import { offWoodMm2, slabRegions, tableRing } from '../../../../tests/support/coverReference'
import { randomSlab } from '../../../../tests/support/randomSlab'
import { seededRandom } from '../../../../tests/support/seededRandom'
import { areaInBox, areaKernel, meanClamped, type TurnedBox } from './areaKernel'
import { edgesOf } from './edgeSet'

const SEED = 4_100

/** A slab with a box that cuts through it somehow: half in, far out, tiny, larger than the slab. */
function caseOf(seed: number) {
  const random = seededRandom(seed)
  const regions = slabRegions(randomSlab(seed))
  const box: TurnedBox = {
    xMm: random.between(-500, 2500),
    yMm: random.between(-600, 600),
    angleRad: random.between(-4, 4),
    halfLengthMm: random.between(1, 1600),
    halfWidthMm: random.between(1, 700),
  }
  return { regions, edges: edgesOf(regions, [0, 0]), box }
}

const cornerPose = ({ xMm, yMm, angleRad, halfLengthMm: a, halfWidthMm: b }: TurnedBox) => ({
  xMm: xMm - a * Math.cos(angleRad) + b * Math.sin(angleRad),
  yMm: yMm - a * Math.sin(angleRad) - b * Math.cos(angleRad),
  angleRad,
  turnedOver: false,
})

describe(`areaKernel, random slabs and boxes from seed ${SEED}`, () => {
  it('LAY-10 gives the area that clipping gives, holes left out', () => {
    for (let seed = SEED; seed < SEED + 80; seed += 1) {
      const { regions, edges, box } = caseOf(seed)
      const size = [2 * box.halfLengthMm, 2 * box.halfWidthMm] as const
      const clipped = size[0] * size[1] - offWoodMm2(regions, tableRing(...size), cornerPose(box))
      // Clipping drops faces below 1 mm² and rounds to 0.0001 mm.
      expect(Math.abs(areaInBox(edges, box) - clipped)).toBeLessThan(4)
      expect(areaKernel(edges, box).areaMm2).toBeCloseTo(areaInBox(edges, box), 6)
    }
  })

  it('LAY-11 gives the gradient that small moves and turns show', () => {
    for (let seed = SEED; seed < SEED + 80; seed += 1) {
      const { edges, box } = caseOf(seed)
      const numeric = (key: 'xMm' | 'yMm' | 'angleRad', step: number): number =>
        (areaInBox(edges, { ...box, [key]: box[key] + step }) -
          areaInBox(edges, { ...box, [key]: box[key] - step })) /
        (2 * step)
      const exact = areaKernel(edges, box)
      // The side's length in wood jumps where the side passes a corner: by at most the corner's slope times the step.
      expect(Math.abs(exact.perXMm - numeric('xMm', 1e-4))).toBeLessThan(0.05)
      expect(Math.abs(exact.perYMm - numeric('yMm', 1e-4))).toBeLessThan(0.05)
      const armMm = box.halfLengthMm + box.halfWidthMm
      expect(Math.abs(exact.perRadMm2 - numeric('angleRad', 1e-7)) / armMm).toBeLessThan(0.1)
    }
  })

  it('LAY-10 means a clamped value over a stretch by its pieces', () => {
    // From −3 to 5 with half 1: a quarter at −1, half at +1, a quarter rising through 0.
    expect(meanClamped(-3, 5, 1)).toBeCloseTo(-0.25 + 0.5, 12)
    expect(meanClamped(2, 9, 1)).toBe(1)
    expect(meanClamped(0.5, 0.5, 1)).toBe(0.5)
    expect(meanClamped(1, 1 + 1e-15, 1)).toBe(1)
  })
})
