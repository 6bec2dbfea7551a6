import exifr from 'exifr'
import { describe, expect, it } from 'vitest'
import type { Orientation } from './exif'
import {
  decodeJpeg,
  emptyFile,
  OCEAN_LOCATION,
  photoJpeg,
  photoPixels,
  type PhotoSize,
  smallPng,
  smallWebp,
  textNamedJpg,
  truncatedJpeg,
} from './jpegs'
import type { Pixels } from './pixels'

/** Mean grey of the block around a place given in shares of width and height. */
const greyAt = ({ widthPx, heightPx, rgba }: Pixels, across: number, down: number): number => {
  let sum = 0
  const radius = 4
  for (let dy = -radius; dy <= radius; dy++) {
    for (let dx = -radius; dx <= radius; dx++) {
      const at = (Math.floor(down * heightPx) + dy) * widthPx + Math.floor(across * widthPx) + dx
      sum += rgba[at * 4 + 1] ?? 0
    }
  }
  return sum / (2 * radius + 1) ** 2
}

/**
 * Where an upright place is stored, from the wording of the standard's tag 274: e.g. 6 says that row 0 is the right
 * side and column 0 the top, so the stored x runs down the upright picture and the stored y runs from right to left.
 */
const storedPlace: Readonly<Record<Orientation, (x: number, y: number) => readonly [number, number]>> = {
  1: (x, y) => [x, y],
  2: (x, y) => [1 - x, y],
  3: (x, y) => [1 - x, 1 - y],
  4: (x, y) => [x, 1 - y],
  5: (x, y) => [y, x],
  6: (x, y) => [y, 1 - x],
  7: (x, y) => [1 - y, 1 - x],
  8: (x, y) => [1 - y, x],
}

const places = [
  [0.2, 0.15],
  [0.5, 0.5],
  [0.85, 0.3],
  [0.35, 0.8],
] as const

describe('test photos', () => {
  const upright = photoPixels('d4', '0.75 MP')

  it.each([1, 2, 3, 4, 5, 6, 7, 8] as const)(
    'turn their pixels as orientation %i says',
    async (orientation) => {
      const bytes = photoJpeg({ photo: 'd4', size: '0.75 MP', orientation })
      expect(await exifr.orientation(bytes)).toBe(orientation)
      const stored = decodeJpeg(bytes)
      expect([stored.widthPx, stored.heightPx]).toEqual(orientation >= 5 ? [750, 1000] : [1000, 750])
      for (const [x, y] of places) {
        const [storedX, storedY] = storedPlace[orientation](x, y)
        expect(Math.abs(greyAt(stored, storedX, storedY) - greyAt(upright, x, y))).toBeLessThan(4)
      }
    },
  )

  it('carry a location when asked to, and none otherwise', async () => {
    const tagged = await exifr.gps(
      photoJpeg({ photo: 'd2', size: '6.75 MP', orientation: 1, location: OCEAN_LOCATION }),
    )
    expect(tagged.latitude).toBeCloseTo(OCEAN_LOCATION.latitudeDeg, 4)
    expect(tagged.longitude).toBeCloseTo(OCEAN_LOCATION.longitudeDeg, 4)
    expect(await exifr.gps(photoJpeg({ photo: 'd2', size: '6.75 MP' }))).toBeUndefined()
  })

  it.each<[PhotoSize, number]>([
    ['12 MP', 12_000_000],
    ['48 MP', 48_000_000],
    ['60 MP', 59_996_352],
  ])('have the pixels of %s', (size, pixelCount) => {
    const bytes = Buffer.from(photoJpeg({ photo: 'd2', size }))
    const frame = bytes.indexOf(Buffer.from([0xff, 0xc0, 0x00, 0x11, 0x08]))
    expect(bytes.readUInt16BE(frame + 5) * bytes.readUInt16BE(frame + 7)).toBe(pixelCount)
    expect([...bytes.subarray(-2)]).toEqual([0xff, 0xd9])
  })

  it('show the same picture when enlarged', () => {
    const original = photoPixels('d2', '6.75 MP')
    const large = decodeJpeg(photoJpeg({ photo: 'd2', size: '12 MP' }))
    for (const [x, y] of places) {
      expect(Math.abs(greyAt(large, x, y) - greyAt(original, x, y))).toBeLessThan(6)
    }
  })

  it('come broken, too', () => {
    expect(emptyFile()).toHaveLength(0)
    expect([...truncatedJpeg().subarray(0, 2)]).toEqual([0xff, 0xd8])
    expect(Buffer.from(truncatedJpeg()).indexOf(Buffer.from([0xff, 0xd9]))).toBe(-1)
    expect(() => decodeJpeg(textNamedJpg())).toThrow('SOI not found')
  })

  it('come as PNG and WebP by their signatures', () => {
    expect([...smallPng().subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47])
    expect(Buffer.from(smallWebp()).toString('latin1', 8, 16)).toBe('WEBPVP8L')
  })
})
