import { describe, expect, it } from 'vitest'
import { noise } from '../../../tests/bench/scale/benchNoise'
import { type PhotoName, readTruth } from '../../../tests/support/truth'
import { pxPoint } from '../geometry'
import type { ScaleInput } from './scaleInput'
import { slabScaleFromMarks } from './slabScale'

const { normal } = noise(11)

/** The four marks of a demo photo, clicked and taped as well as a maker can. */
function photoInput(name: PhotoName): ScaleInput {
  const truth = readTruth(name)
  const reference = truth.references[0]
  if (!reference || !('pair_distances_mm' in reference)) throw new Error('no marks')
  return {
    marks: reference.centers_px.map((_, i) => ({ id: `m${i + 1}`, heightMm: 0 })),
    observations: reference.centers_px.map(([x, y], i) => ({
      markId: `m${i + 1}`,
      atPx: pxPoint(x + normal(0.2), y + normal(0.2)),
    })),
    tapedDistances: Object.entries(reference.pair_distances_mm).map(([key, lengthMm]) => {
      const [a = '', b = ''] = key.split('-')
      return { id: key, markIds: [`m${a}`, `m${b}`] as const, lengthMm: lengthMm + normal(0.5) }
    }),
    boards: [],
    imageWidthPx: truth.photo.width_px,
    imageHeightPx: truth.photo.height_px,
    focalLength35mm: 26,
    clickSdPx: 0.2,
  }
}

describe('a misread tape', () => {
  it.each(['d2', 'd4'] as const)(
    'PHO-10 of six distances the one that is off by 25 mm is named first on %s',
    (name) => {
      const input = photoInput(name)
      expect(slabScaleFromMarks(input).problems).toEqual([])
      let alone = 0
      for (const wrong of input.tapedDistances) {
        for (const offMm of [25, -25]) {
          const tapedDistances = input.tapedDistances.map((d) =>
            d === wrong ? { ...d, lengthMm: d.lengthMm + offMm } : d,
          )
          const told = slabScaleFromMarks({ ...input, tapedDistances }).problems
          expect(told).toHaveLength(1)
          expect(told[0]?.distanceIds[0]).toBe(wrong.id)
          if (told[0]?.code === 'distance-disagrees') alone += 1
          expect(Math.abs(Number(told[0]?.values['differenceMm']) - offMm)).toBeLessThan(12)
        }
      }
      // The distances alone could not tell at all: each of six fits without any one of them.
      expect(alone).toBeGreaterThanOrEqual(8)
    },
  )

  it('PHO-10 without the focal length and with nothing to spare no distance is accused', () => {
    const input = photoInput('d2')
    const five = { ...input, focalLength35mm: null, tapedDistances: input.tapedDistances.slice(1) }
    expect(slabScaleFromMarks(five).problems).toEqual([])
  })
})
