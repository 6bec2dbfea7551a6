import type { Ring } from './region'

/**
 * Signed area of a ring.
 * @param ring open list, mm; fewer than three points have no area
 * @returns mm²; positive for outer rings, negative for holes
 * Method: shoelace ½ Σ (xᵢ·yᵢ₊₁ − xᵢ₊₁·yᵢ) with the first vertex subtracted first, so that a ring far from the
 * origin loses no digits.
 * Rules: GEO-1, GEO-2.
 */
export function ringAreaMm2(ring: Ring): number {
  const first = ring[0]
  if (first === undefined) return 0
  let twice = 0
  let dx = 0
  let dy = 0
  for (const [x, y] of ring) {
    const nextDx = x - first[0]
    const nextDy = y - first[1]
    twice += dx * nextDy - nextDx * dy
    dx = nextDx
    dy = nextDy
  }
  return twice / 2
}
