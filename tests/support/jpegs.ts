import { createHash, randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import jpeg from 'jpeg-js'
import { type ExifTags, type Orientation, withExif } from './exif'
import { encodePng, enlarged, type Pixels, reduced, storedPixels } from './pixels'
import { type PhotoName, readPhotoBytes } from './truth'
import { encodeWebp } from './webp'

/** Making a large JPEG takes seconds, so each is made once. Raise the version when the way they are made changes. */
const CACHE_VERSION = 1
const cacheFolder = fileURLToPath(new URL('../../node_modules/.cache/test-photos/', import.meta.url))

const cached = (key: string, make: () => Uint8Array): Uint8Array => {
  const name = createHash('sha256').update(`${CACHE_VERSION} ${key}`).digest('hex').slice(0, 24)
  const file = `${cacheFolder}${name}`
  if (existsSync(file)) return new Uint8Array(readFileSync(file))
  const bytes = make()
  mkdirSync(cacheFolder, { recursive: true })
  // Another test may make the same file now: whoever is last wins, and nobody reads a half.
  const unfinished = `${file}.${randomUUID()}`
  writeFileSync(unfinished, bytes)
  renameSync(unfinished, file)
  return bytes
}

/** The pixels of any baseline or progressive JPEG as they are stored, orientation not applied. */
export const decodeJpeg = (bytes: Uint8Array): Pixels => {
  const { width, height, data } = jpeg.decode(bytes, {
    useTArray: true,
    formatAsRGBA: true,
    maxResolutionInMP: 100,
    maxMemoryUsageInMB: 4096,
  })
  return { widthPx: width, heightPx: height, rgba: data }
}

const encodeJpeg = ({ widthPx, heightPx, rgba }: Pixels, quality: number): Uint8Array =>
  new Uint8Array(jpeg.encode({ width: widthPx, height: heightPx, data: rgba }, quality).data)

/** Sides of the upright picture; all have the photos' shape, 4 to 3. */
const SIZES_PX = {
  '0.75 MP': [1000, 750],
  '6.75 MP': [3000, 2250],
  '12 MP': [4000, 3000],
  '48 MP': [8000, 6000],
  '60 MP': [8944, 6708],
} as const

export type PhotoSize = keyof typeof SIZES_PX

export interface TestJpeg {
  readonly photo: PhotoName
  readonly size: PhotoSize
  readonly orientation?: Orientation
  readonly location?: ExifTags['location']
}

/** The upright pixels of a demo photo in one of the sizes. Positions scale with the width: same corners. */
export const photoPixels = (photo: PhotoName, size: PhotoSize): Pixels => {
  const original = decodeJpeg(readPhotoBytes(photo))
  const [widthPx, heightPx] = SIZES_PX[size]
  if (widthPx === original.widthPx) return original
  return widthPx < original.widthPx
    ? reduced(original, original.widthPx / widthPx)
    : enlarged(original, widthPx, heightPx)
}

/**
 * A demo photo as a phone might have stored it: in this size, its pixels really turned so that the orientation tag
 * brings the same picture upright, with a location tag if asked for. Made once, then read from a cache.
 */
export const photoJpeg = ({ photo, size, orientation, location }: TestJpeg): Uint8Array => {
  const isOriginal = size === '6.75 MP' && (orientation ?? 1) === 1
  const picture = isOriginal
    ? readPhotoBytes(photo)
    : cached(`${photo} ${size} turned ${orientation ?? 1}`, () =>
        encodeJpeg(storedPixels(photoPixels(photo, size), orientation ?? 1), size === '0.75 MP' ? 92 : 80),
      )
  return withExif(picture, {
    ...(orientation ? { orientation } : {}),
    ...(location ? { location } : {}),
  })
}

/** In the South Pacific, farther from any land than any other place: no one's home. */
export const OCEAN_LOCATION = { latitudeDeg: -48.8767, longitudeDeg: -123.3933 } as const

/** A JPEG that stops in the middle of its picture, as after a broken transfer. */
export const truncatedJpeg = (photo: PhotoName = 'd2'): Uint8Array => {
  const whole = readPhotoBytes(photo)
  return whole.slice(0, Math.floor(whole.length * 0.4))
}

export const emptyFile = (): Uint8Array => new Uint8Array(0)

/** What a text looks like that someone renamed to `.jpg`. */
export const textNamedJpg = (): Uint8Array =>
  new TextEncoder().encode('Oak slab, 2.4 m by 0.9 m, in the shed behind the planer.\n'.repeat(40))

/** The small photo as a PNG, without loss. */
export const smallPng = (photo: PhotoName = 'd2'): Uint8Array =>
  cached(`${photo} png`, () => encodePng(photoPixels(photo, '0.75 MP')))

/** The small photo as a WebP, without loss. */
export const smallWebp = (photo: PhotoName = 'd2'): Uint8Array =>
  cached(`${photo} webp`, () => encodeWebp(photoPixels(photo, '0.75 MP')))
