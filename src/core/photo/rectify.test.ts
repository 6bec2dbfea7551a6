import { describe, expect, it } from 'vitest'
import { markInput, scene, seen } from '../../../tests/check-values/photo.scene'
import { slabPoint } from '../geometry'
import { rectifyingTransform, rectifyInto, type RgbaImage } from './rectify'
import { pxFromSlabPoint, slabFrame, slabPointFromPx, type SlabFrame } from './slabFrame'
import { slabScaleFromMarks } from './slabScale'

function frameOf(at: ReturnType<typeof scene>): SlabFrame {
  const { scale } = slabScaleFromMarks(markInput(at))
  const frame = scale && slabFrame(scale, { fromPx: seen(at, [-1000, 0]), toPx: seen(at, [1000, 0]) })
  if (!frame?.ok) throw new Error('no frame')
  return frame.value
}

/** A photo whose red is x / 12 and green is y / 12 of the pixel: a picture that tells where it was sampled. */
function ramp(widthPx: number, heightPx: number): RgbaImage {
  const data = new Uint8ClampedArray(widthPx * heightPx * 4)
  for (let i = 0; i < widthPx * heightPx; i++) {
    data[4 * i] = (i % widthPx) / 12
    data[4 * i + 1] = Math.floor(i / widthPx) / 12
    data[4 * i + 3] = 255
  }
  return { data, widthPx, heightPx }
}

describe('rectifyInto', () => {
  it('PHO-14 draws each millimetre where the frame says it is, lens bow taken out', () => {
    const at = scene({ tilt: 0.7, k1: -0.05 })
    const frame = frameOf(scene({ tilt: 0.7 }))
    const bowed = { ...frame, camera: { ...frame.camera, lens: at.camera.lens } }
    const window = { minXMm: 200, minYMm: -300, maxXMm: 1800, maxYMm: 300, mmPerPx: 4 }
    const transform = rectifyingTransform(bowed, window)
    expect([transform.widthPx, transform.heightPx]).toEqual([400, 150])
    const target = { data: new Uint8ClampedArray(400 * 150 * 4), widthPx: 400, heightPx: 150 }
    rectifyInto(ramp(3000, 2250), target, transform, { from: 0, to: 75 })
    expect(target.data[(100 * 400 + 5) * 4 + 3]).toBe(0)
    rectifyInto(ramp(3000, 2250), target, transform, { from: 75, to: 150 })
    for (const [col, row] of [
      [3, 4],
      [200, 70],
      [390, 140],
      [20, 130],
    ] as const) {
      const px = pxFromSlabPoint(bowed, slabPoint(200 + (col + 0.5) * 4, -300 + (row + 0.5) * 4))
      expect(Math.abs((target.data[(row * 400 + col) * 4] ?? 0) - (px[0] - 0.5) / 12)).toBeLessThan(1)
      expect(Math.abs((target.data[(row * 400 + col) * 4 + 1] ?? 0) - (px[1] - 0.5) / 12)).toBeLessThan(1)
    }
  })

  it('PHO-14 leaves what the photo does not show transparent', () => {
    const frame = frameOf(scene())
    const transform = rectifyingTransform(frame, {
      minXMm: 9000,
      minYMm: 0,
      maxXMm: 9040,
      maxYMm: 40,
      mmPerPx: 4,
    })
    const target = { data: new Uint8ClampedArray(400).fill(7), widthPx: 10, heightPx: 10 }
    rectifyInto(ramp(3000, 2250), target, transform, { from: 0, to: 10 })
    expect(target.data[3]).toBe(0)
  })

  it('PHO-11 the slab frame and its way back to the photo agree', () => {
    const frame = frameOf(scene({ tilt: 0.9, turn: 2.5 }))
    for (const p of [
      [0, 0],
      [1800, 400],
      [-50, -420],
    ] as const) {
      const back = slabPointFromPx(frame, pxFromSlabPoint(frame, slabPoint(p[0], p[1])))
      expect(Math.hypot(back[0] - p[0], back[1] - p[1])).toBeLessThan(1e-6)
    }
  })
})
