import type { Point } from '../geometry'
import type { RgbaImage } from './rectify'

/** A cut-out of the upright photo at full resolution; (leftPx, topPx) is its corner in the photo. */
export interface PixelWindow extends RgbaImage {
  readonly leftPx: number
  readonly topPx: number
}

export type Colour = readonly [red: number, green: number, blue: number]

/** A whole photo as a window. */
export const wholePhoto = (image: RgbaImage): PixelWindow => ({ ...image, leftPx: 0, topPx: 0 })

/** Copies the part of a window within `half` pixels of a point, as far as there is one. */
export function windowAround(from: PixelWindow, [x, y]: Point, half: number): PixelWindow {
  const left = Math.max(0, Math.floor(x - from.leftPx - half))
  const top = Math.max(0, Math.floor(y - from.topPx - half))
  const right = Math.min(from.widthPx, Math.ceil(x - from.leftPx + half))
  const bottom = Math.min(from.heightPx, Math.ceil(y - from.topPx + half))
  const widthPx = Math.max(0, right - left)
  const heightPx = Math.max(0, bottom - top)
  const data = new Uint8ClampedArray(widthPx * heightPx * 4)
  for (let row = 0; row < heightPx; row++) {
    const start = ((top + row) * from.widthPx + left) * 4
    data.set(from.data.subarray(start, start + widthPx * 4), row * widthPx * 4)
  }
  return { data, widthPx, heightPx, leftPx: from.leftPx + left, topPx: from.topPx + top }
}

/** Colour at a place of the photo, between pixels by bilinear blending; at the border the border's own. */
export function colourAt(window: PixelWindow, [x, y]: Point): Colour {
  const u = Math.min(Math.max(x - window.leftPx - 0.5, 0), window.widthPx - 1.001)
  const v = Math.min(Math.max(y - window.topPx - 0.5, 0), window.heightPx - 1.001)
  const left = Math.trunc(u)
  const top = Math.trunc(v)
  const p = (top * window.widthPx + left) * 4
  const q = p + window.widthPx * 4
  const channel = (c: number): number => blended(window.data, p + c, q + c, u - left, v - top)
  return [channel(0), channel(1), channel(2)]
}

function blended(data: Uint8ClampedArray, p: number, q: number, fx: number, fy: number): number {
  const above = (data[p] ?? 0) * (1 - fx) + (data[p + 4] ?? 0) * fx
  const below = (data[q] ?? 0) * (1 - fx) + (data[q + 4] ?? 0) * fx
  return above * (1 - fy) + below * fy
}

export const isInWindow = (window: PixelWindow, [x, y]: Point, margin: number): boolean =>
  x - window.leftPx >= margin &&
  y - window.topPx >= margin &&
  x - window.leftPx <= window.widthPx - margin &&
  y - window.topPx <= window.heightPx - margin

/** Middle of several colours, channel by channel: a speck of dirt does not move it. */
export function medianColour(colours: readonly Colour[]): Colour {
  const channel = (c: 0 | 1 | 2): number => median(colours.map((colour) => colour[c]))
  return [channel(0), channel(1), channel(2)]
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2
}

export const colourDistance = (a: Colour, b: Colour): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
