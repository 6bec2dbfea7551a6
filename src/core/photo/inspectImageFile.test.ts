import { describe, expect, it } from 'vitest'
import {
  decodeJpeg,
  emptyFile,
  OCEAN_LOCATION,
  photoJpeg,
  smallPng,
  smallWebp,
  textNamedJpg,
  truncatedJpeg,
} from '../../../tests/support/jpegs'
import { readPhotoBytes } from '../../../tests/support/truth'
import { joinBytes } from './fileBytes'
import { inspectImageFile } from './inspectImageFile'
import { withoutLocation } from './withoutLocation'

const codeOf = (bytes: Uint8Array): unknown => {
  const answer = inspectImageFile(bytes)
  return answer.ok ? 'ok' : answer.problem
}
const factsOf = (bytes: Uint8Array): Extract<ReturnType<typeof inspectImageFile>, { ok: true }>['value'] => {
  const answer = inspectImageFile(bytes)
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}
const ascii = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0))

describe('inspectImageFile', () => {
  it('PHO-12 reads size and orientation of a JPEG, all eight ways up', () => {
    for (const orientation of [1, 2, 3, 4, 5, 6, 7, 8] as const) {
      const facts = factsOf(photoJpeg({ photo: 'd2', size: '0.75 MP', orientation }))
      expect(facts).toMatchObject({
        mediaType: 'image/jpeg',
        widthPx: 1000,
        heightPx: 750,
        orientation,
        hasLocation: false,
      })
      expect(facts.storedWidthPx).toBe(orientation >= 5 ? 750 : 1000)
    }
  })

  it('PHO-12 reads PNG and WebP, and the focal length where a phone wrote it', () => {
    expect(factsOf(smallPng())).toMatchObject({
      mediaType: 'image/png',
      widthPx: 1000,
      heightPx: 750,
      orientation: 1,
    })
    expect(factsOf(smallWebp())).toMatchObject({ mediaType: 'image/webp', widthPx: 1000, heightPx: 750 })
    expect(factsOf(withFocalLength()).focalLength35mm).toBe(26)
  })

  it('PHO-12 refuses what it cannot take, and says what it is', () => {
    expect(codeOf(emptyFile())).toEqual({ code: 'photo-empty', values: {} })
    expect(codeOf(textNamedJpg())).toEqual({ code: 'photo-not-an-image', values: {} })
    expect(codeOf(truncatedJpeg())).toEqual({ code: 'photo-truncated', values: {} })
    expect(codeOf(smallPng().subarray(0, 5000))).toEqual({ code: 'photo-truncated', values: {} })
    expect(codeOf(smallWebp().subarray(0, 5000))).toEqual({ code: 'photo-truncated', values: {} })
    expect(codeOf(Uint8Array.of(0xff, 0xd8, 0xff))).toEqual({ code: 'photo-truncated', values: {} })
    expect(codeOf(ascii('\0\0\0\x18ftypheic\0\0\0\0'))).toEqual({
      code: 'photo-unsupported',
      values: { format: 'HEIC' },
    })
    expect(codeOf(ascii('\0\0\0\x18ftypavif\0\0\0\0'))).toEqual({
      code: 'photo-unsupported',
      values: { format: 'AVIF' },
    })
    expect(codeOf(ascii('GIF89a............'))).toEqual({
      code: 'photo-unsupported',
      values: { format: 'GIF' },
    })
  })

  it('PHO-12 names the size of a photo that is too large, and takes one of 48 megapixels', () => {
    expect(codeOf(headOnly(8944, 6708))).toMatchObject({
      code: 'photo-too-large',
      values: { widthPx: 8944, mostMegapixels: 50 },
    })
    expect(factsOf(headOnly(8000, 6000)).megapixels).toBe(48)
  })

  it('PHO-13 takes the location out and keeps pixels, orientation and focal length', () => {
    const before = photoJpeg({ photo: 'd2', size: '0.75 MP', orientation: 6, location: OCEAN_LOCATION })
    expect(factsOf(before).hasLocation).toBe(true)
    const after = withoutLocation(before)
    expect(factsOf(after)).toEqual({ ...factsOf(before), hasLocation: false })
    expect(samePixels(after, before)).toBe(true)
    const withFocal = withFocalLength()
    expect(factsOf(withoutLocation(withFocal))).toEqual(factsOf(withFocal))
  })

  it('PHO-13 drops comments, XMP, IPTC and whatever follows the end, and keeps the colour profile', () => {
    const plain = photoJpeg({ photo: 'd2', size: '0.75 MP' })
    const dressed = joinBytes([
      plain.subarray(0, 2),
      segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude="1"/>'),
      segment(0xed, 'Photoshop 3.0\0somewhere'),
      segment(0xfe, 'a comment'),
      segment(0xe2, 'ICC_PROFILE\0\x01\x01profile'),
      plain.subarray(2),
      ascii('a film clip after the end'),
    ])
    expect(factsOf(dressed).hasLocation).toBe(true)
    const text = String.fromCharCode(...withoutLocation(dressed).subarray(0, 400))
    expect(text).toContain('ICC_PROFILE')
    for (const word of ['xap', 'Photoshop', 'comment', 'GPS']) expect(text).not.toContain(word)
    const tail = String.fromCharCode(...withoutLocation(dressed).slice(-30))
    expect(tail).not.toContain('film')
    expect(samePixels(withoutLocation(dressed), plain)).toBe(true)
  })

  it('PHO-13 drops the text of a PNG and keeps its picture, and leaves a plain WebP as it is', () => {
    const plain = smallPng()
    const ihdr = 8 + 25
    const text = ascii('tEXtAuthor\0someone')
    const chunk = Uint8Array.from([0, 0, 0, text.length - 4, ...text, 1, 2, 3, 4])
    const dressed = joinBytes([plain.subarray(0, ihdr), chunk, plain.subarray(ihdr)])
    expect(Buffer.compare(withoutLocation(dressed), withoutLocation(plain))).toBe(0)
    expect(Buffer.compare(withoutLocation(smallWebp()), smallWebp())).toBe(0)
  })
})

/** Compared as buffers: a matcher over millions of bytes takes seconds. */
const samePixels = (a: Uint8Array, b: Uint8Array): boolean =>
  Buffer.compare(decodeJpeg(a).rgba, decodeJpeg(b).rgba) === 0

function segment(marker: number, text: string): Uint8Array {
  return Uint8Array.from([0xff, marker, (text.length + 2) >> 8, (text.length + 2) & 255, ...ascii(text)])
}

/** The demo photo as it came from the phone that it pretends to be: its own EXIF says 26 mm. */
const withFocalLength = (): Uint8Array => readPhotoBytes('d2')

/** A JPEG of which only the frame header is real: enough to ask for its size. */
function headOnly(widthPx: number, heightPx: number): Uint8Array {
  return Uint8Array.from([
    0xff,
    0xd8,
    0xff,
    0xc0,
    0,
    11,
    8,
    heightPx >> 8,
    heightPx & 255,
    widthPx >> 8,
    widthPx & 255,
    1,
    1,
    0x11,
    0,
    0xff,
    0xda,
    0,
    8,
    1,
    1,
    0,
    0,
    63,
    0,
    0x12,
    0x34,
    0xff,
    0xd9,
  ])
}
