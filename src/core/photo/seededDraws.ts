import { CAMERA_PARAMETER_COUNT } from './adjustment'
import { choleskyFactor, entryOf } from './matrix'
import type { SlabScale } from './scaleOfPhoto'

/**
 * Normal random numbers, mean 0 and deviation 1: the same seed gives the same row.
 * Method: mulberry32 (a public-domain generator of 32 bits of state), turned normal by Box and Muller.
 */
export function seededNormals(seed: number): () => number {
  let state = seed | 0
  const even = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  return () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even())
}

/**
 * By how much θ may be off the answer: draws from Σ.
 * @returns one list of ten for each draw, in the order of `CAMERA_PARAMETERS`; no draws where Σ is not positive definite
 * Only figures that are linear in θ may be fed with them: far out along Σ a camera no longer shows the marks where they
 * were seen. Rules: PHO-15.
 */
export function thetaDraws(
  { covariance }: SlabScale,
  count: number,
  normal: () => number,
): readonly (readonly number[])[] {
  const n = CAMERA_PARAMETER_COUNT
  const lower = choleskyFactor({ rows: n, cols: n, values: Float64Array.from(covariance) })
  if (lower === null) return []
  return Array.from({ length: count }, () => {
    const z = Array.from({ length: n }, normal)
    return z.map((_, i) => z.slice(0, i + 1).reduce((sum, value, k) => sum + value * entryOf(lower, i, k), 0))
  })
}
