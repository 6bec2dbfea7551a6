import type { Ring } from '../../geometry'
import type { LengthDisplay } from '../../units'
import { inchToMm } from '../../units'

/** Where a square to the datum leaves the wood on either side. */
export interface SlabTape {
  readonly alongMm: number
  /** Across the datum, right positive: the edge furthest left and the one furthest right. */
  readonly leftAtMm: number
  readonly rightAtMm: number
}

const MOST_TAPES = 8
const METRIC_STEPS = [50, 100, 200, 250, 500, 1000, 2000]
const INCH_STEPS = [2, 6, 12, 24, 36, 48, 96].map(inchToMm)

/** Places across the datum where the ring crosses the square at a station. */
function crossings(ring: Ring, alongMm: number): readonly number[] {
  return ring.flatMap(([x0, y0], k) => {
    const [x1, y1] = ring[(k + 1) % ring.length] ?? [x0, y0]
    if (x0 <= alongMm === x1 <= alongMm) return []
    return [y0 + ((y1 - y0) * (alongMm - x0)) / (x1 - x0)]
  })
}

/**
 * Where the edge lies at even stations along the datum, to be checked with a tape on the slab itself.
 * @param outline  the slab's edge, mm in the slab frame: the datum is its x axis
 * @returns at most eight, at whole steps of the maker's units
 * Rules: SHT-11.
 */
export function slabTapes(outline: Ring, { system }: LengthDisplay): readonly SlabTape[] {
  const xs = outline.map(([x]) => x)
  const [least, most] = [Math.min(...xs), Math.max(...xs)]
  const steps = system === 'mm' ? METRIC_STEPS : INCH_STEPS
  const countOf = (step: number): number => Math.floor(most / step) - Math.ceil(least / step) + 1
  const step = steps.find((candidate) => countOf(candidate) <= MOST_TAPES) ?? most - least
  const first = Math.ceil(least / step)
  return Array.from({ length: Math.max(0, countOf(step)) }, (_, k) => (first + k) * step).flatMap(
    (alongMm) => {
      const across = crossings(outline, alongMm)
      return across.length < 2
        ? []
        : [{ alongMm, leftAtMm: Math.min(...across), rightAtMm: Math.max(...across) }]
    },
  )
}
