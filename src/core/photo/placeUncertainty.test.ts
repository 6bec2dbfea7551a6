import { describe, expect, it } from 'vitest'
import { noise } from '../../../tests/bench/scale/benchNoise'
import { markInput, scene, seen } from '../../../tests/check-values/photo.scene'
import { pxPoint } from '../geometry'
import { cameraWith, thetaOf } from './adjustment'
import { choleskyFactor, matrixTimes } from './matrix'
import { placeMeasurer } from './placeUncertainty'
import { slabFrame, slabPointFromPx } from './slabFrame'
import { slabScaleFromMarks } from './slabScale'

const at = scene({ tilt: 0.8 })
const { scale } = slabScaleFromMarks({ ...markInput(at), flatness: { kind: 'unknown' } })
const datum = { fromPx: seen(at, [-1000, 0]), toPx: seen(at, [1000, 0]) }

describe('placeMeasurer', () => {
  it('PHO-15 says how sure a place is, as draws of θ scatter it', () => {
    if (!scale) throw new Error('no scale')
    const measure = placeMeasurer(scale, datum, 0)
    const lower = choleskyFactor({ rows: 10, cols: 10, values: Float64Array.from(scale.covariance) })
    if (!measure || !lower) throw new Error('no measurer')
    const { normal } = noise(3)
    const theta = thetaOf(scale.camera)
    const probes = [seen(at, [-900, -420]), seen(at, [850, 400]), seen(at, [100, -450])]
    const draws = Array.from({ length: 1500 }, () => {
      const step = matrixTimes(
        lower,
        Array.from({ length: 10 }, () => normal(1)),
      )
      const camera = cameraWith(
        scale.camera,
        theta.map((value, i) => value + (step[i] ?? 0)),
      )
      const frame = slabFrame({ ...scale, camera }, datum)
      if (!frame.ok) throw new Error('no frame')
      return probes.map((px) => slabPointFromPx(frame.value, px))
    })
    probes.forEach((px, i) => {
      const { at: place, sdMm } = measure(px)
      const greatest = Math.max(
        ...Array.from({ length: 36 }, (_, n) => {
          const [c, s] = [Math.cos((n * Math.PI) / 36), Math.sin((n * Math.PI) / 36)]
          const squares = draws.map(
            (d) => (((d[i]?.[0] ?? 0) - place[0]) * c + ((d[i]?.[1] ?? 0) - place[1]) * s) ** 2,
          )
          return Math.sqrt(squares.reduce((a, b) => a + b, 0) / draws.length)
        }),
      )
      expect(sdMm / greatest).toBeGreaterThan(0.9)
      expect(sdMm / greatest).toBeLessThan(1.1)
    })
  })

  it('PHO-15 the datum’s first anchor is sure by definition, and a click adds its own error', () => {
    if (!scale) throw new Error('no scale')
    expect(placeMeasurer(scale, datum, 0)?.(datum.fromPx).sdMm).toBeLessThan(1e-6)
    const one = placeMeasurer(scale, datum, 1)?.(datum.fromPx).sdMm ?? 0
    expect(one).toBeGreaterThan(0.3)
    expect(placeMeasurer(scale, datum, 2)?.(datum.fromPx).sdMm).toBeCloseTo(2 * one, 6)
  })

  it('PHO-15 a datum that carries no frame gives no map', () => {
    if (!scale) throw new Error('no scale')
    const spot = pxPoint(1500, 1100)
    expect(placeMeasurer(scale, { fromPx: spot, toPx: spot }, 1)).toBeNull()
  })
})
