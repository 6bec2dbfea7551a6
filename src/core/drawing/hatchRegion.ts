import { InvariantError } from '../units'
import type { Point, Region } from '../geometry'
import type { Segment } from './sheet'

export interface HatchStyle {
  /** Distance between the lines, mm, > 0. */
  readonly spacingMm: number
  /** Direction of the lines; x towards y. */
  readonly angleRad: number
}

/** Places where a ring crosses the level v. Each edge owns its lower end only, so that a corner counts once. */
function crossingsOf(ring: readonly Point[], v: number): readonly number[] {
  return ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length] ?? a
    if (a[1] <= v === b[1] <= v) return []
    return [a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0])]
  })
}

const turned = ([x, y]: Point, cos: number, sin: number): Point => [x * cos - y * sin, x * sin + y * cos]

/**
 * Parallel lines that fill a region, clipped to it: hatching that prints anywhere because it is real lines.
 * The lines of one style lie on one grid through the sheet's corner, so that neighbours match.
 * @param region  mm of paper
 * @returns segments inside the region, none in its holes
 * @throws InvariantError when the spacing is not > 0
 * Method: scan lines in a frame turned by the angle; pairs of sorted crossings. Rules: DRW-7.
 */
export function hatchRegion(region: Region, style: HatchStyle): readonly Segment[] {
  const { spacingMm, angleRad } = style
  if (!(spacingMm > 0)) throw new InvariantError('hatch spacing must be > 0', { spacingMm })
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  const rings = [region.outer, ...region.holes].map((ring) => ring.map((point) => turned(point, cos, -sin)))
  const levels = rings.flatMap((ring) => ring.map(([, v]) => v))
  const [lowest, highest] = [Math.min(...levels), Math.max(...levels)]
  const segments: Segment[] = []
  for (let step = Math.ceil(lowest / spacingMm); step * spacingMm < highest; step++) {
    const v = step * spacingMm
    const crossings = rings.flatMap((ring) => crossingsOf(ring, v)).toSorted((a, b) => a - b)
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [from = 0, to = 0] = crossings.slice(k, k + 2)
      if (to > from) segments.push([turned([from, v], cos, sin), turned([to, v], cos, sin)])
    }
  }
  return segments
}
