import { InvariantError } from '../units'
import { brandedPoint } from './brandedPoint'
import type { Point } from './point'
import type { Region, Ring } from './region'
import { ringCentroid } from './ringMoments'

/**
 * A place inside a face, quickly: for labels and names that are worked out anew at every step of a drag. Not as far from
 * the edge as `interiorPoint`, but always within.
 * @param region one face with area
 * @returns the middle of the widest stretch inside along x through the centroid's height, then the middle of the stretch
 *   along y through that place
 * @throws InvariantError when the face has no inside there
 */
export function spanPoint<P extends Point>(region: Region<P>): P {
  const rings = [region.outer, ...region.holes]
  const [, height] = ringCentroid(region.outer)
  const wide = widest(spansAt(rings, 1, height))
  if (wide === null) throw new InvariantError('a face has no inside at its centroid', { height })
  const x = (wide[0] + wide[1]) / 2
  const tall = spansAt(rings, 0, x).find(([from, to]) => from <= height && height <= to) ?? [height, height]
  return brandedPoint<P>(x, (tall[0] + tall[1]) / 2)
}

type Span = readonly [from: number, to: number]

/** Stretches inside the face along the line where coordinate `axis` equals `at`, by the even-odd rule. */
function spansAt(rings: readonly Ring[], axis: 0 | 1, at: number): readonly Span[] {
  const other = axis === 0 ? 1 : 0
  const crossings: number[] = []
  for (const ring of rings) {
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length] ?? a
      if (a[axis] >= at === b[axis] >= at) return
      crossings.push(a[other] + ((b[other] - a[other]) * (at - a[axis])) / (b[axis] - a[axis]))
    })
  }
  crossings.sort((p, q) => p - q)
  return crossings.flatMap((from, index): Span[] => {
    const to = crossings[index + 1]
    return index % 2 === 0 && to !== undefined ? [[from, to]] : []
  })
}

function widest(spans: readonly Span[]): Span | null {
  return spans.reduce<Span | null>(
    (best, span) => (best === null || span[1] - span[0] > best[1] - best[0] ? span : best),
    null,
  )
}
