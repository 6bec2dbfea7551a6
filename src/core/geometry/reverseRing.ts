import type { Point } from './point'
import type { Ring } from './region'

/** The same outline run the other way, from the same first point: the sign flips, nothing else does. Rules: GEO-1. */
export function reverseRing<P extends Point>(ring: Ring<P>): Ring<P> {
  return [...ring.slice(0, 1), ...ring.slice(1).reverse()]
}
