import {
  intersectRegions,
  regionsAreaMm2,
  regionsFromRings,
  ringAreaMm2,
  slabPoint,
  type SlabPoint,
} from '../../../src/core/geometry'
import type { PhotoTruth } from './truthFile'

type Pair = readonly [number, number]

/** mm on the slab's face from a photo pixel, by the truth's camera: the lens undone by iteration, then the plane. */
export function truthMmFromPx(truth: PhotoTruth, [u, v]: Pair): Pair {
  const { fx, fy, cx, cy, k1, k2 } = truth.camera
  const xd = (u - cx) / fx
  const yd = (v - cy) / fy
  let x = xd
  let y = yd
  for (let i = 0; i < 30; i++) {
    const rSq = x * x + y * y
    const bow = 1 + k1 * rSq + k2 * rSq * rSq
    x = xd / bow
    y = yd / bow
  }
  return throughInverse(truth.homography_plane_mm_to_undistorted_px, [fx * x + cx, fy * y + cy])
}

function throughInverse(h: PhotoTruth['homography_plane_mm_to_undistorted_px'], [u, v]: Pair): Pair {
  const [[a, b, c], [d, e, f], [g, hh, i]] = h
  const p = [e * i - f * hh, c * hh - b * i, b * f - c * e]
  const q = [f * g - d * i, a * i - c * g, c * d - a * f]
  const r = [d * hh - e * g, b * g - a * hh, a * e - b * d]
  const dot = ([x = 0, y = 0, z = 0]: readonly number[]): number => x * u + y * v + z
  const w = dot(r)
  return [dot(p) / w, dot(q) / w]
}

export interface OutlineScore {
  readonly medianMm: number
  readonly p95Mm: number
  readonly areaErrorFraction: number
  readonly iou: number
  /** Mean of the signed distances: above zero where the trace stands outside. */
  readonly biasMm: number
}

const asRing = (points: readonly Pair[]): readonly SlabPoint[] => {
  const ring = points.map(([x, y]) => slabPoint(x, y))
  return ringAreaMm2(ring) < 0 ? ring.toReversed() : ring
}

export function iouOf(a: readonly Pair[], b: readonly Pair[]): number {
  const first = regionsFromRings([asRing(a)])
  const second = regionsFromRings([asRing(b)])
  const both = regionsAreaMm2(intersectRegions(first, second))
  return both / (regionsAreaMm2(first) + regionsAreaMm2(second) - both)
}

/** Every `stepMm` along a closed line. */
export function alongRing(ring: readonly Pair[], stepMm: number): Pair[] {
  const places: Pair[] = []
  let left = 0
  for (const [n, [x0, y0]] of ring.entries()) {
    const [x1, y1] = ring[(n + 1) % ring.length] ?? [0, 0]
    const length = Math.hypot(x1 - x0, y1 - y0)
    for (; left < length; left += stepMm) {
      places.push([x0 + ((x1 - x0) * left) / length, y0 + ((y1 - y0) * left) / length])
    }
    left -= length
  }
  return places
}

/** Distances from many places to a closed line: segments by cells, rings of cells outwards. */
export function distancesToRing(places: readonly Pair[], ring: readonly Pair[]): number[] {
  const cell = 20
  const cells = new Map<string, number[]>()
  const dense = alongRing(ring, 0.5)
  for (const [n, [x, y]] of dense.entries()) {
    const key = `${Math.floor(x / cell)} ${Math.floor(y / cell)}`
    const list = cells.get(key)
    if (list) list.push(n)
    else cells.set(key, [n])
  }
  return places.map(([x, y]) => {
    let best = Infinity
    const ci = Math.floor(x / cell)
    const cj = Math.floor(y / cell)
    for (let reach = 0; best > (reach - 1) * cell && reach < 400; reach++) {
      for (let j = -reach; j <= reach; j++) {
        for (let i = -reach; i <= reach; i++) {
          if (Math.max(Math.abs(i), Math.abs(j)) !== reach) continue
          for (const n of cells.get(`${ci + i} ${cj + j}`) ?? []) {
            const [px, py] = dense[n] ?? [0, 0]
            best = Math.min(best, Math.hypot(px - x, py - y))
          }
        }
      }
    }
    return best
  })
}

const inRing = ([x, y]: Pair, ring: readonly Pair[]): boolean => {
  let odd = false
  for (let n = 0, m = ring.length - 1; n < ring.length; m = n++) {
    const [x0, y0] = ring[n] ?? [0, 0]
    const [x1, y1] = ring[m] ?? [0, 0]
    if (y0 > y !== y1 > y && x < ((x1 - x0) * (y - y0)) / (y1 - y0) + x0) odd = !odd
  }
  return odd
}

export function scoreOutline(truth: PhotoTruth, outlinePx: readonly Pair[]): OutlineScore {
  const traced = outlinePx.map((p) => truthMmFromPx(truth, p))
  const real = truth.slab.top_outline_mm
  const places = alongRing(traced, 2)
  const distances = distancesToRing(places, real)
  const sorted = distances.toSorted((a, b) => a - b)
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0
  const areaMm2 = Math.abs(ringAreaMm2(asRing(traced)))
  let bias = 0
  for (const [n, place] of places.entries()) bias += (inRing(place, real) ? -1 : 1) * (distances[n] ?? 0)
  return {
    medianMm: at(0.5),
    p95Mm: at(0.95),
    areaErrorFraction: areaMm2 / truth.slab.top_area_gross_mm2 - 1,
    iou: iouOf(traced, real),
    biasMm: bias / places.length,
  }
}
