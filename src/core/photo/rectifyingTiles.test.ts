import { describe, expect, it } from 'vitest'
import type { PixelArea, RectifyingTile } from './rectifyingTiles'
import { rectifyingTiles } from './rectifyingTiles'
import { rectifyInto, type RectifyingTransform, type RgbaImage } from './rectify'

const PHOTO = { widthPx: 900, heightPx: 700 }

const blank = (widthPx: number, heightPx: number): RgbaImage => ({
  data: new Uint8ClampedArray(widthPx * heightPx * 4),
  widthPx,
  heightPx,
})

/** Smooth waves: neighbouring pixels differ little, so that a shift of a hundredth of a pixel stays invisible. */
function waves(): RgbaImage {
  const image = blank(PHOTO.widthPx, PHOTO.heightPx)
  for (let y = 0; y < PHOTO.heightPx; y++) {
    for (let x = 0; x < PHOTO.widthPx; x++) {
      const at = (y * PHOTO.widthPx + x) * 4
      image.data[at] = 127 + 120 * Math.sin(x / 17)
      image.data[at + 1] = 127 + 120 * Math.cos(y / 23)
      image.data[at + 2] = 127 + 120 * Math.sin((x + y) / 31)
      image.data[at + 3] = 255
    }
  }
  return image
}

/** What a canvas does when it draws a part of a picture at its own size. */
function cut(source: RgbaImage, area: PixelArea): RgbaImage {
  const part = blank(area.widthPx, area.heightPx)
  for (let y = 0; y < area.heightPx; y++) {
    const from = ((area.yPx + y) * source.widthPx + area.xPx) * 4
    part.data.set(source.data.subarray(from, from + area.widthPx * 4), y * area.widthPx * 4)
  }
  return part
}

function paste(target: RgbaImage, part: RgbaImage, { xPx, yPx }: PixelArea): void {
  for (let y = 0; y < part.heightPx; y++) {
    const row = part.data.subarray(y * part.widthPx * 4, (y + 1) * part.widthPx * 4)
    target.data.set(row, ((yPx + y) * target.widthPx + xPx) * 4)
  }
}

/** Tilted a little, bowed by the lens, reaching beyond the photo on all sides. */
const TRANSFORM: RectifyingTransform = {
  widthPx: 1000,
  heightPx: 800,
  photoFromTarget: [1.02, 0.06, -60, -0.04, 0.98, -30, 4e-5, 6e-5, 1],
  lens: { focalPx: 800, centrePx: [450, 350], k1: -0.05, k2: 0.01 },
}

describe('rectifyingTiles', () => {
  it('PHO-14 together give the very picture that is drawn in one piece', () => {
    const source = waves()
    const whole = blank(TRANSFORM.widthPx, TRANSFORM.heightPx)
    rectifyInto(source, whole, TRANSFORM, { from: 0, to: whole.heightPx })
    const tiled = blank(TRANSFORM.widthPx, TRANSFORM.heightPx)
    const tiles = rectifyingTiles(TRANSFORM, PHOTO)
    for (const tile of tiles) {
      expect([tile.source.readWidthPx, tile.source.readHeightPx]).toEqual([
        tile.source.widthPx,
        tile.source.heightPx,
      ])
      const part = blank(tile.target.widthPx, tile.target.heightPx)
      rectifyInto(cut(source, tile.source), part, tile.transform, { from: 0, to: part.heightPx })
      paste(tiled, part, tile.target)
    }
    let worst = 0
    let shown = 0
    for (let at = 0; at < whole.data.length; at++) {
      worst = Math.max(worst, Math.abs((whole.data[at] ?? 0) - (tiled.data[at] ?? 0)))
      if (at % 4 === 3 && whole.data[at] === 255) shown++
    }
    // Rounding of the last bit.
    expect(worst).toBeLessThanOrEqual(1)
    expect(shown).toBeGreaterThan(400_000)
  })

  it('PHO-14 leave out what the photo does not show', () => {
    const away = { ...TRANSFORM, photoFromTarget: [1, 0, 5000, 0, 1, 0, 0, 0, 1] as const }
    expect(rectifyingTiles(away, PHOTO)).toEqual([])
  })

  it('PHO-14 read a photo that is far finer than the view at a smaller size', () => {
    const coarse = {
      ...TRANSFORM,
      photoFromTarget: [8, 0, 0, 0, 8, 0, 0, 0, 1] as const,
      widthPx: 100,
      heightPx: 80,
    }
    const [tile] = rectifyingTiles(coarse, PHOTO)
    expect(tile?.source.widthPx).toBeGreaterThan(700)
    expect(tile?.source.readWidthPx).toBeLessThanOrEqual(2 * 100)
  })

  it('PHO-14 bound what is read for a tile that reaches the horizon', () => {
    const horizon = { ...TRANSFORM, photoFromTarget: [1, 0, 0, 0, 1, 0, 0, -2e-3, 1] as const }
    const sizes = rectifyingTiles(horizon, PHOTO).map(
      ({ source }: RectifyingTile) => source.readWidthPx * source.readHeightPx,
    )
    expect(sizes.length).toBeGreaterThan(0)
    expect(Math.max(...sizes)).toBeLessThanOrEqual(PHOTO.widthPx * PHOTO.heightPx)
  })
})
