import { describe, expect, it } from 'vitest'
import {
  cameraShowing,
  fitCamera,
  isOnScreen,
  panBy,
  resizedCamera,
  screenLength,
  screenOf,
  visibleBounds,
  worldLength,
  worldOf,
  zoomAbout,
} from './view'

const camera = { scale: 0.25, x: 100, y: -40 }

describe('view', () => {
  it('puts a world point on screen by scale and shift', () => {
    // by hand: 100 + 0.25·400 = 200; −40 + 0.25·1000 = 210
    expect(screenOf(camera, [400, 1000])).toEqual([200, 210])
  })

  it('finds the world point under a screen point: the way back', () => {
    const [x, y] = worldOf(camera, screenOf(camera, [123.4, -567.8]))
    expect(x).toBeCloseTo(123.4, 9)
    expect(y).toBeCloseTo(-567.8, 9)
  })

  it('turns lengths both ways', () => {
    expect(screenLength(camera, 2000)).toBe(500)
    expect(worldLength(camera, 500)).toBe(2000)
  })

  it('keeps the point under the pointer while zooming', () => {
    const zoomed = zoomAbout(camera, [333, 222], 1.7)
    const before = worldOf(camera, [333, 222])
    const after = worldOf(zoomed, [333, 222])
    expect(after[0]).toBeCloseTo(before[0], 9)
    expect(after[1]).toBeCloseTo(before[1], 9)
    expect(zoomed.scale).toBeCloseTo(0.425, 12)
  })

  it('never zooms beyond its limits, and stays where it is there', () => {
    const near = zoomAbout(camera, [10, 10], 1e9)
    expect(near.scale).toBe(40)
    expect(zoomAbout(near, [500, 10], 2)).toEqual(near)
    expect(zoomAbout(camera, [10, 10], 1e-9).scale).toBe(0.005)
  })

  it('fits a wide box by its width and sets it in the middle of what the insets leave', () => {
    // by hand: 1000 − 2·28 = 944 px for 2000 units; the middle of 60 … 760 is 410
    const fitted = fitCamera(
      { minX: 1000, minY: 500, maxX: 3000, maxY: 900 },
      { width: 1000, height: 800 },
      { top: 60, bottom: 40, sides: 28 },
    )
    expect(fitted.scale).toBeCloseTo(0.472, 12)
    const [x, y] = screenOf(fitted, [2000, 700])
    expect(x).toBeCloseTo(500, 9)
    expect(y).toBeCloseTo(410, 9)
  })

  it('fits a tall box by its height', () => {
    // by hand: 800 − 60 − 40 = 700 px for 1400 units
    const fitted = fitCamera(
      { minX: 0, minY: 0, maxX: 100, maxY: 1400 },
      { width: 1000, height: 800 },
      { top: 60, bottom: 40, sides: 28 },
    )
    expect(fitted.scale).toBe(0.5)
    expect(screenOf(fitted, [0, 0])[1]).toBe(60)
    expect(screenOf(fitted, [0, 1400])[1]).toBe(760)
  })

  it('fits also a single point, and a canvas without room for the insets', () => {
    const fitted = fitCamera(
      { minX: 5, minY: 5, maxX: 5, maxY: 5 },
      { width: 30, height: 30 },
      { top: 60, bottom: 60, sides: 28 },
    )
    expect(screenOf(fitted, [5, 5])).toEqual([15, 15])
    expect(fitted.scale).toBe(15) // half of the height
  })

  it('keeps the middle in the middle when the canvas is resized', () => {
    const from = { width: 800, height: 600 }
    const to = { width: 390, height: 420 }
    const resized = resizedCamera(camera, from, to)
    expect(worldOf(resized, [195, 210])).toEqual(worldOf(camera, [400, 300]))
  })

  it('brings a point that is off screen just inside', () => {
    const size = { width: 400, height: 300 }
    const shown = cameraShowing(camera, [4000, 0], size, 40)
    expect(screenOf(shown, [4000, 0])).toEqual([360, 40])
    expect(cameraShowing(camera, [800, 800], size, 40)).toEqual(camera)
  })

  it('says what of the world is on screen', () => {
    expect(visibleBounds(panBy(camera, -100, 40), { width: 100, height: 50 })).toEqual({
      minX: 0,
      minY: 0,
      maxX: 400,
      maxY: 200,
    })
    expect(isOnScreen([0, 50], { width: 100, height: 50 })).toBe(true)
    expect(isOnScreen([101, 50], { width: 100, height: 50 })).toBe(false)
  })
})
