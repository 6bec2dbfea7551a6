import { InvariantError } from '../units'
import { brandedPoint } from './brandedPoint'
import { itemAt, itemRound } from './itemAt'
import type { Point } from './point'
import type { Ring } from './region'

/** Area, centroid and second moments about axes through the centroid. A hole's figures are negative. */
export interface Moments<P extends Point = Point> {
  readonly areaMm2: number
  readonly centroid: P
  /** ∫ y² dA about the centroid. */
  readonly aboutXMm4: number
  /** ∫ x² dA about the centroid. */
  readonly aboutYMm4: number
  /** ∫ x·y dA about the centroid. */
  readonly productMm4: number
}

/**
 * Area, centroid and second moments of what a ring encloses.
 * @param ring open list, mm; must not cross itself
 * @returns moments with the ring's own sign, so that a hole's can be added to its outer ring's
 * @throws InvariantError when the ring has no area
 * Method: Green's theorem, edge by edge (Σ cᵢ/2; Σ (xᵢ+xᵢ₊₁)cᵢ/6A; Σ (yᵢ²+yᵢyᵢ₊₁+yᵢ₊₁²)cᵢ/12;
 * Σ (xᵢyᵢ₊₁+2xᵢyᵢ+2xᵢ₊₁yᵢ₊₁+xᵢ₊₁yᵢ)cᵢ/24), first from the first vertex to find the centroid, then from the centroid
 * itself: the parallel-axis subtraction would lose digits in long thin rings.
 * Rules: GEO-1, GEO-2.
 */
export function ringMoments<P extends Point>(ring: Ring<P>): Moments<P> {
  if (ring.length < 3) throw new InvariantError('a ring without area has no moments', { points: ring.length })
  const origin = itemAt(ring, 0)
  const first = firstMoments(ring, origin)
  if (first.areaMm2 === 0)
    throw new InvariantError('a ring without area has no moments', { points: ring.length })
  const centroid = brandedPoint<P>(
    origin[0] + first.xMm3 / first.areaMm2,
    origin[1] + first.yMm3 / first.areaMm2,
  )
  return { areaMm2: first.areaMm2, centroid, ...secondMoments(ring, centroid) }
}

/**
 * Centre of gravity of what a ring encloses.
 * @param ring open list, mm; must not cross itself
 * @throws InvariantError when the ring has no area
 */
export const ringCentroid = <P extends Point>(ring: Ring<P>): P => ringMoments(ring).centroid

function firstMoments(ring: Ring, origin: Point) {
  let areaMm2 = 0
  let xMm3 = 0
  let yMm3 = 0
  forEachEdgeFrom(ring, origin, (x0, y0, x1, y1) => {
    const c = x0 * y1 - x1 * y0
    areaMm2 += c / 2
    xMm3 += ((x0 + x1) * c) / 6
    yMm3 += ((y0 + y1) * c) / 6
  })
  return { areaMm2, xMm3, yMm3 }
}

function secondMoments(ring: Ring, origin: Point) {
  let aboutXMm4 = 0
  let aboutYMm4 = 0
  let productMm4 = 0
  forEachEdgeFrom(ring, origin, (x0, y0, x1, y1) => {
    const c = x0 * y1 - x1 * y0
    aboutXMm4 += ((y0 * y0 + y0 * y1 + y1 * y1) * c) / 12
    aboutYMm4 += ((x0 * x0 + x0 * x1 + x1 * x1) * c) / 12
    productMm4 += ((x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) * c) / 24
  })
  return { aboutXMm4, aboutYMm4, productMm4 }
}

function forEachEdgeFrom(
  ring: Ring,
  origin: Point,
  visit: (x0: number, y0: number, x1: number, y1: number) => void,
): void {
  ring.forEach(([x, y], i) => {
    const next = itemRound(ring, i + 1)
    visit(x - origin[0], y - origin[1], next[0] - origin[0], next[1] - origin[1])
  })
}
