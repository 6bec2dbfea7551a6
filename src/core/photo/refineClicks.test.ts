import { describe, expect, it } from 'vitest'
import { noise } from '../../../tests/bench/scale/benchNoise'
import { decodeJpeg } from '../../../tests/support/jpegs'
import { type PhotoName, readPhotoBytes, readTruth } from '../../../tests/support/truth'
import { pxPoint, type PxPoint } from '../geometry'
import type { PixelWindow } from './pixelWindow'
import { type RefinedClick, THUMB_SD_PX } from './refined'
import { refineBoard } from './refineBoard'
import { refineCross } from './refineCross'
import { refineLine } from './refineLine'
import { refineRoundMark } from './refineRound'
import { refineRule } from './refineRule'

const photos = new Map<PhotoName, PixelWindow>()
function photo(name: PhotoName): PixelWindow {
  const known = photos.get(name)
  if (known) return known
  const { widthPx, heightPx, rgba } = decodeJpeg(readPhotoBytes(name))
  const window = { data: new Uint8ClampedArray(rgba), widthPx, heightPx, leftPx: 0, topPx: 0 }
  photos.set(name, window)
  return window
}

const { normal } = noise(5)
const thumb = ([x, y]: readonly [number, number]): PxPoint =>
  pxPoint(x + normal(THUMB_SD_PX), y + normal(THUMB_SD_PX))
const away = (px: PxPoint, [x, y]: readonly [number, number]): number => Math.hypot(px[0] - x, px[1] - y)

function marksOf(name: PhotoName): readonly (readonly [number, number])[] {
  const reference = readTruth(name).references[0]
  if (!reference || !('centers_px' in reference)) throw new Error('no marks')
  return reference.centers_px
}

/** A bare stretch of wood on d2, far from any mark. */
const BARE_WOOD = pxPoint(1500, 1000)

describe('refined clicks', () => {
  it.each([
    ['a round mark', 'd2', refineRoundMark],
    ['a taped cross', 'd4', refineCross],
  ] as const)('PHO-16 finds the middle of %s to 0.35 px from thumb clicks', (_, name, refine) => {
    for (const centre of marksOf(name)) {
      const answers = Array.from({ length: 12 }, () => refine(photo(name), thumb(centre)))
      const sure = answers.filter((a) => a.sure)
      expect(sure.length).toBeGreaterThanOrEqual(11)
      for (const a of sure) expect(away(a.px, centre)).toBeLessThan(0.45)
      const errors = sure.map((a) => away(a.px, centre)).sort((p, q) => p - q)
      expect(errors[Math.floor(errors.length / 2)]).toBeLessThan(0.35)
      // The stated deviation is of the size of the error: neither boast nor alarm.
      for (const a of sure) expect(a.sdPx).toBeLessThan(0.5)
    }
  })

  it('PHO-16 finds all four corners of a board to 0.35 px, and its sides lie on the straight edges', () => {
    const reference = readTruth('d1').references[0]
    if (!reference || !('corners_top_face_px' in reference)) throw new Error('no board')
    const [a, b, c, d] = reference.corners_top_face_px
    if (!a || !b || !c || !d) throw new Error('no corners')
    for (let n = 0; n < 5; n++) {
      const { corners, sides } = refineBoard(photo('d1'), [thumb(a), thumb(b), thumb(c), thumb(d)])
      corners.forEach((corner, i) => {
        expect(corner.sure).toBe(true)
        expect(away(corner.px, reference.corners_top_face_px[i] ?? [0, 0])).toBeLessThan(0.35)
      })
      expect(sides).toHaveLength(4)
    }
  })

  it('PHO-16 finds a rule’s end to 2 px along it where it is sure', () => {
    const reference = readTruth('d3').references[0]
    if (!reference || !('corners_top_face_px' in reference)) throw new Error('no rule')
    const [a, b, c, d] = reference.corners_top_face_px
    if (!a || !b || !c || !d) throw new Error('no corners')
    const ends = [
      [(a[0] + d[0]) / 2, (a[1] + d[1]) / 2],
      [(b[0] + c[0]) / 2, (b[1] + c[1]) / 2],
    ] as const
    let sure = 0
    for (let n = 0; n < 12; n++) {
      refineRule(photo('d3'), [thumb(ends[0]), thumb(ends[1])]).forEach((answer, i) => {
        if (!answer.sure) return
        sure += 1
        expect(away(answer.px, ends[i] ?? [0, 0])).toBeLessThan(2)
      })
    }
    expect(sure).toBeGreaterThan(12)
  })

  it('PHO-16 leaves the click where there is nothing to find, and says so', () => {
    const expectClick = (answer: RefinedClick, click: PxPoint): void => {
      expect(answer).toEqual({ px: click, sure: false, sdPx: THUMB_SD_PX })
    }
    expectClick(refineRoundMark(photo('d2'), BARE_WOOD), BARE_WOOD)
    expectClick(refineCross(photo('d2'), BARE_WOOD), BARE_WOOD)
    const outside = pxPoint(-50, -50)
    expectClick(refineRoundMark(photo('d2'), outside), outside)
    expectClick(refineCross(photo('d2'), outside), outside)
    const board = refineBoard(photo('d2'), [
      pxPoint(1300, 900),
      pxPoint(1700, 900),
      pxPoint(1700, 1100),
      pxPoint(1300, 1100),
    ])
    expect(board.corners.every((c) => !c.sure)).toBe(true)
    const rule = refineRule(photo('d2'), [pxPoint(1300, 1000), pxPoint(1700, 1010)])
    expect(rule.every((end) => !end.sure)).toBe(true)
    const clicks = [pxPoint(1300, 900), pxPoint(1500, 950), pxPoint(1700, 1000)]
    expect(refineLine(blank(), clicks)).toEqual({ pointsPx: clicks, sure: false, sdPx: 3 })
  })

  it('PHO-16 draws clicks onto a chalk line, bowed as the lens bows it, to 0.3 px', () => {
    const bow = (x: number): number => 300 + 0.08 * (x - 100) + 6 * (1 - ((x - 500) / 400) ** 2)
    const picture = drawn((x, y) => 120 + 90 * Math.exp(-((y - bow(x)) ** 2) / 2))
    const clicks = Array.from({ length: 7 }, (_, i) => {
      const x = 110 + 130 * i
      return pxPoint(x, bow(x) + Math.max(-4, Math.min(4, normal(2))))
    })
    const line = refineLine(picture, clicks)
    expect(line.sure).toBe(true)
    for (const [x, y] of line.pointsPx) expect(Math.abs(y - bow(x))).toBeLessThan(0.3)
  })

  it('PHO-16 draws clicks onto the edge of a board as well, and takes no line from fewer than three', () => {
    const edge = (x: number): number => 280 + 0.1 * x
    const picture = drawn((x, y) => 200 - 110 / (1 + Math.exp(-(y - edge(x)) / 0.6)))
    const clicks = [pxPoint(120, edge(120) + 3), pxPoint(500, edge(500) - 2), pxPoint(880, edge(880) + 2)]
    const line = refineLine(picture, clicks)
    expect(line.sure).toBe(true)
    for (const [x, y] of line.pointsPx) expect(Math.abs(y - edge(x))).toBeLessThan(0.3)
    expect(refineLine(picture, clicks.slice(0, 2)).sure).toBe(false)
  })
})

/** A grey picture of 1000 × 600 with some noise; (x, y) is the middle of each pixel. */
function drawn(grey: (x: number, y: number) => number): PixelWindow {
  const data = new Uint8ClampedArray(1000 * 600 * 4)
  for (let row = 0; row < 600; row++) {
    for (let col = 0; col < 1000; col++) {
      const value = grey(col + 0.5, row + 0.5) + normal(4)
      data.fill(value, (row * 1000 + col) * 4, (row * 1000 + col) * 4 + 3)
    }
  }
  return { data, widthPx: 1000, heightPx: 600, leftPx: 0, topPx: 0 }
}

const blank = (): PixelWindow => ({
  data: new Uint8ClampedArray(2000 * 1200 * 4).fill(128),
  widthPx: 2000,
  heightPx: 1200,
  leftPx: 0,
  topPx: 0,
})
