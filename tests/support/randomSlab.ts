import type { Ring, SlabPoint } from '../../src/core/geometry'
import { pointToRingDistanceMm, isPointInRing, reverseRing, slabPoint } from '../../src/core/geometry'
import type { SeededRandom } from './seededRandom'
import { seededRandom } from './seededRandom'

/** An invented slab: its outline (positive) and voids (negative) lie within each other and never cross. */
export interface RandomSlab {
  readonly outer: Ring<SlabPoint>
  readonly holes: readonly Ring<SlabPoint>[]
}

/**
 * A slab-like shape: two wavy live edges between two sawn ends, a little tapered and turned, with up to five voids.
 * 1.2 to 3 m long, 0.4 to 1 m wide, 200 to 800 vertices round the outline. Pure: the same seed gives the same slab.
 */
export function randomSlab(seed: number): RandomSlab {
  const random = seededRandom(seed)
  const lengthMm = random.between(1200, 3000)
  const widthMm = random.between(400, 1000)
  const perEdge = random.integer(100, 400)
  const upper = liveEdge(random, lengthMm, perEdge, widthMm)
  const lower = liveEdge(random, lengthMm, perEdge, widthMm)
  const outline = [
    ...upper.map(([x, bulge]) => [x, -widthMm / 2 + bulge] as const),
    ...lower.map(([x, bulge]) => [x, widthMm / 2 + bulge] as const).reverse(),
  ]
  const place = placing(random)
  const outer = outline.map(place)
  const holes = voidsIn(random, outline, lengthMm, widthMm)
  return { outer, holes: holes.map((hole) => reverseRing(hole.map(place))) }
}

type Pair = readonly [x: number, y: number]

/** Places along one edge and how far the edge bulges there; never more than 0.35 of the width in all. */
function liveEdge(random: SeededRandom, lengthMm: number, count: number, widthMm: number): readonly Pair[] {
  const waves = Array.from({ length: 5 }, (_, k) => ({
    heightMm: (widthMm * random.between(0, 0.1)) / (k + 1),
    perLength: random.between(0.3, 2) * (k + 1) * (k + 1),
    start: random.between(0, 2 * Math.PI),
  }))
  const roughMm = Math.min(3, lengthMm / count / 2)
  return Array.from({ length: count }, (_, i) => {
    const along = i / (count - 1)
    const jitter = i === 0 || i === count - 1 ? 0 : random.between(-0.4, 0.4) / (count - 1)
    const bulge = waves.reduce(
      (sum, w) => sum + w.heightMm * Math.sin(w.start + 2 * Math.PI * w.perLength * along),
      0,
    )
    return [(along + jitter) * lengthMm, bulge + random.between(-roughMm, roughMm)] as const
  })
}

/** One turn and move for the whole slab, so that its edges are not upright and its coordinates not round. */
function placing(random: SeededRandom): (p: Pair) => SlabPoint {
  const angle = random.between(-0.1, 0.1)
  const [dx, dy] = [random.between(-500, 500), random.between(-500, 500)]
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return ([x, y]) => slabPoint(dx + cos * x - sin * y, dy + sin * x + cos * y)
}

/** Blobs that keep 10 mm from the outline and from each other; a try that does not is thrown away. */
function voidsIn(random: SeededRandom, outline: readonly Pair[], lengthMm: number, widthMm: number) {
  const voids: (readonly Pair[])[] = []
  for (let tries = random.integer(0, 5); tries > 0; tries -= 1) {
    const centre: Pair = [random.between(0, lengthMm), random.between(-widthMm / 2, widthMm / 2)]
    const radiusMm = random.between(8, widthMm / 6)
    const isClear = [outline, ...voids].every(
      (ring) => pointToRingDistanceMm(centre, ring) > radiusMm * 1.3 + 10,
    )
    const isInside = isPointInRing(centre, outline) && !voids.some((ring) => isPointInRing(centre, ring))
    const blob = blobAt(random, centre, radiusMm)
    if (isClear && isInside) voids.push(blob)
  }
  return voids
}

/** A star-shaped blob: radius between 0.7 and 1.3 times the given one. */
function blobAt(random: SeededRandom, centre: Pair, radiusMm: number): readonly Pair[] {
  const count = random.integer(8, 60)
  const lobes = random.integer(2, 5)
  const start = random.between(0, 2 * Math.PI)
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const r = radiusMm * (1 + 0.2 * Math.sin(lobes * angle + start) + random.between(-0.1, 0.1))
    return [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)] as const
  })
}
