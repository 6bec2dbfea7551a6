import type { Point, Region, Ring } from '../../geometry'

/** Greatest distance between two stations along an offcut, mm. */
const STATION_STEP_MM = 10
/** Greatest distance between two places of the outline that are looked at, mm. */
const SAMPLE_STEP_MM = 6
/** Vertices nearer than this to the last place looked at are passed over, mm; the finish is exact. */
const SAMPLE_LEAST_MM = 2.5
/** The first and last station lie so far inside, where the wood has a width, mm. */
const END_INSET_MM = 0.02

/**
 * An offcut as rows of numbers along an axis of its own: its widths at stations, and places along its outline by the bin
 * (the wood between two stations) in which they lie. u runs along the axis, v to its right, both from the pivot.
 */
export interface OffcutProfile {
  readonly pivot: Point
  /** Direction of the axis in the offcut's own frame. */
  readonly axisRad: number
  readonly bins: number
  readonly stepMm: number
  /** u of each of the bins + 1 stations. */
  readonly stationMm: Float64Array
  /** Stretches of wood across each station: those of station k are spanFrom[k] to spanFrom[k + 1]. */
  readonly spanFrom: Int32Array
  readonly spanLowMm: Float64Array
  readonly spanHighMm: Float64Array
  /** Places on the outline: those of bin k are sampleFrom[k] to sampleFrom[k + 1]. */
  readonly sampleFrom: Int32Array
  readonly sampleU: Float64Array
  readonly sampleV: Float64Array
  /** No wood lies further than this from the pivot, mm. */
  readonly radiusMm: number
}

/** @param axisRad direction of the axis in the region's own frame */
export function offcutProfile(region: Region, axisRad: number): OffcutProfile {
  const turned = [region.outer, ...region.holes].map((ring) => turnedRing(ring, axisRad))
  const us = (turned[0] ?? []).map(([u]) => u)
  const vs = (turned[0] ?? []).map(([, v]) => v)
  const [minU, maxU] = [Math.min(...us), Math.max(...us)]
  const middle: Point = [(minU + maxU) / 2, (Math.min(...vs) + Math.max(...vs)) / 2]
  const rings = turned.map((ring) => ring.map(([u, v]): Point => [u - middle[0], v - middle[1]]))
  const bins = Math.max(1, Math.ceil((maxU - minU) / STATION_STEP_MM))
  const stepMm = (maxU - minU) / bins
  const stationMm = Float64Array.from({ length: bins + 1 }, (_, k) => (k - bins / 2) * stepMm)
  const [cos, sin] = [Math.cos(axisRad), Math.sin(axisRad)]
  return {
    pivot: [middle[0] * cos - middle[1] * sin, middle[0] * sin + middle[1] * cos],
    axisRad,
    bins,
    stepMm,
    stationMm,
    ...spansOf(rings, stationMm),
    ...samplesOf(rings, bins, stepMm),
    radiusMm: Math.max(...(rings[0] ?? []).map(([u, v]) => Math.hypot(u, v))),
  }
}

function turnedRing(ring: Ring, axisRad: number): readonly Point[] {
  const [cos, sin] = [Math.cos(axisRad), Math.sin(axisRad)]
  return ring.map(([x, y]): Point => [x * cos + y * sin, y * cos - x * sin])
}

function spansOf(
  rings: readonly (readonly Point[])[],
  stationMm: Float64Array,
): Pick<OffcutProfile, 'spanFrom' | 'spanLowMm' | 'spanHighMm'> {
  const last = stationMm.length - 1
  const crossings: number[][] = Array.from(stationMm, () => [])
  const lookU = Array.from(stationMm, (u, k) =>
    k === 0 ? u + END_INSET_MM : k === last ? u - END_INSET_MM : u,
  )
  const step = (stationMm[1] ?? 1) - (stationMm[0] ?? 0)
  for (const ring of rings) {
    ring.forEach(([u1, v1], i) => {
      const [u0, v0] = ring[(i + ring.length - 1) % ring.length] ?? [u1, v1]
      const first = Math.max(0, Math.floor((Math.min(u0, u1) - (lookU[0] ?? 0)) / step) - 1)
      const past = Math.min(last, Math.ceil((Math.max(u0, u1) - (lookU[0] ?? 0)) / step) + 1)
      for (let k = first; k <= past; k += 1) {
        const u = lookU[k] ?? 0
        if (u0 <= u !== u1 <= u) crossings[k]?.push(v0 + ((v1 - v0) * (u - u0)) / (u1 - u0))
      }
    })
  }
  const spans = crossings.map((row) => row.sort((a, b) => a - b))
  const spanFrom = new Int32Array(stationMm.length + 1)
  spans.forEach((row, k) => (spanFrom[k + 1] = (spanFrom[k] ?? 0) + Math.floor(row.length / 2)))
  const flat = spans.flatMap((row) => row.slice(0, 2 * Math.floor(row.length / 2)))
  return {
    spanFrom,
    spanLowMm: Float64Array.from(flat.filter((_, i) => i % 2 === 0)),
    spanHighMm: Float64Array.from(flat.filter((_, i) => i % 2 === 1)),
  }
}

function samplesOf(
  rings: readonly (readonly Point[])[],
  bins: number,
  stepMm: number,
): Pick<OffcutProfile, 'sampleFrom' | 'sampleU' | 'sampleV'> {
  const byBin: Point[][] = Array.from({ length: bins }, () => [])
  for (const place of rings.flatMap(placesAlong)) {
    const bin = Math.floor(place[0] / stepMm + bins / 2)
    byBin[Math.min(bins - 1, Math.max(0, bin))]?.push(place)
  }
  const sampleFrom = new Int32Array(bins + 1)
  byBin.forEach((row, k) => (sampleFrom[k + 1] = (sampleFrom[k] ?? 0) + row.length))
  const flat = byBin.flat()
  return {
    sampleFrom,
    sampleU: Float64Array.from(flat, ([u]) => u),
    sampleV: Float64Array.from(flat, ([, v]) => v),
  }
}

function placesAlong(ring: readonly Point[]): readonly Point[] {
  const places: Point[] = []
  let last: Point = [Infinity, Infinity]
  ring.forEach((point, i) => {
    const next = ring[(i + 1) % ring.length] ?? point
    const parts = Math.max(1, Math.ceil(Math.hypot(next[0] - point[0], next[1] - point[1]) / SAMPLE_STEP_MM))
    for (let part = 0; part < parts; part += 1) {
      const share = part / parts
      const place: Point = [point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]
      if (Math.hypot(place[0] - last[0], place[1] - last[1]) < SAMPLE_LEAST_MM) continue
      places.push(place)
      last = place
    }
  })
  return places
}
