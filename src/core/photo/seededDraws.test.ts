import { describe, expect, it } from 'vitest'
import { markInput, scene } from '../../../tests/check-values/photo.scene'
import { seededNormals, thetaDraws } from './seededDraws'
import { slabScaleFromMarks } from './slabScale'
import { thetaVariance } from './uncertainty'

const SEED = 3
const COUNT = 4000

describe('draws from what the scale does not know', () => {
  it('PHO-15 spread a linear figure as widely as gᵀΣg says, and are the same again', () => {
    const { scale } = slabScaleFromMarks(markInput(scene()))
    if (!scale) throw new Error('no scale')
    const draws = thetaDraws(scale, COUNT, seededNormals(SEED))
    expect(thetaDraws(scale, 5, seededNormals(SEED))).toEqual(draws.slice(0, 5))
    for (const gradient of [
      [0, 0, 1, 0, 0, 0, 0, 0, 0, 0],
      [300, -200, 1000, 500, 0.1, -0.2, 40, 10, 1, -1],
    ]) {
      const figures = draws.map((d) => d.reduce((sum, v, k) => sum + v * (gradient[k] ?? 0), 0))
      const rms = Math.sqrt(figures.reduce((sum, v) => sum + v * v, 0) / COUNT)
      // The deviation of 4000 draws is known to 1.1 %.
      expect(rms / Math.sqrt(thetaVariance(scale, gradient))).toBeGreaterThan(0.96)
      expect(rms / Math.sqrt(thetaVariance(scale, gradient))).toBeLessThan(1.04)
    }
  })

  it('PHO-15 are normal', () => {
    const normal = seededNormals(SEED)
    const values = Array.from({ length: 20_000 }, normal)
    const share = (limit: number): number => values.filter((v) => v < limit).length / values.length
    // Table of the normal distribution: Φ(−1.96), Φ(0), Φ(1).
    expect(share(-1.96)).toBeCloseTo(0.025, 2)
    expect(share(0)).toBeCloseTo(0.5, 1)
    expect(share(1)).toBeCloseTo(0.8413, 1)
  })

  it('PHO-15 are none where nothing is known', () => {
    const { scale } = slabScaleFromMarks(markInput(scene()))
    if (!scale) throw new Error('no scale')
    const nothing = { ...scale, covariance: scale.covariance.map(() => 0) }
    expect(thetaDraws(nothing, 5, seededNormals(SEED))).toEqual([])
  })
})
