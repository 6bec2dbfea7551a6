import { describe, expect, it } from 'vitest'
import { decodeJpeg } from '../../../tests/support/jpegs'
import { readPhotoBytes } from '../../../tests/support/truth'
import { photoSharpness } from './photoSharpness'
import type { PixelWindow } from './pixelWindow'

function photo(name: 'd1' | 'd3'): PixelWindow {
  const { widthPx, heightPx, rgba } = decodeJpeg(readPhotoBytes(name))
  return { data: new Uint8ClampedArray(rgba), widthPx, heightPx, leftPx: 0, topPx: 0 }
}

/** A hand that moved: every pixel is the mean of the 2·reach + 1 along a row or a column. */
function shaken(image: PixelWindow, reach: number, along: 'row' | 'column'): PixelWindow {
  const { widthPx, heightPx, data } = image
  const moved = new Uint8ClampedArray(data.length).fill(255)
  const step = along === 'row' ? 4 : 4 * widthPx
  for (let i = 0; i < widthPx * heightPx; i++) {
    for (let c = 0; c < 3; c++) {
      let sum = 0
      for (let k = -reach; k <= reach; k++) sum += data[4 * i + c + k * step] ?? data[4 * i + c] ?? 0
      moved[4 * i + c] = sum / (2 * reach + 1)
    }
  }
  return { ...image, data: moved }
}

describe('photoSharpness', () => {
  it('PHO-19 takes sharp photos as sharp', () => {
    for (const name of ['d1', 'd3'] as const) {
      const { edgeWidthPx, isBlurred } = photoSharpness(photo(name))
      expect(isBlurred).toBe(false)
      expect(edgeWidthPx).toBeLessThan(3)
    }
  })

  it('PHO-19 notices a hand that moved by nine pixels, whichever way', () => {
    for (const along of ['row', 'column'] as const) {
      expect(photoSharpness(shaken(photo('d1'), 4, along)).isBlurred).toBe(true)
    }
  })

  it('PHO-19 says nothing of a picture without edges', () => {
    const grey = {
      data: new Uint8ClampedArray(600 * 600 * 4).fill(90),
      widthPx: 600,
      heightPx: 600,
      leftPx: 0,
      topPx: 0,
    }
    expect(photoSharpness(grey)).toEqual({ edgeWidthPx: 0, isBlurred: false })
  })
})
