import type { DepthLimit } from './depthLimit'
import type { PourPlanInput } from './pourPlanInput'

/** A slightly thinner cast that needs a layer less. */
export interface ThinnerCast {
  readonly castDepthMm: number
  readonly thinnerByMm: number
  readonly layers: number
}

/** How much thinner is still called slightly: a tenth, where the maker names no least thickness. */
const SLIGHTLY = 0.1

/**
 * Whether a slightly thinner cast saves a whole pour.
 * @returns null where it does not, where the layers were set by hand, or where the cast would get too thin
 * Rules: RES-17.
 */
export function thinnerCast(input: PourPlanInput, limit: DepthLimit, layers: number): ThinnerCast | null {
  if (layers < 2 || input.layers.some(({ depthMm }) => depthMm !== null)) return null
  // A layer that was added for heat or mass is not saved by a thinner cast.
  if (layers !== Math.ceil(input.castDepthMm / limit.planMm - 1e-9)) return null
  const castDepthMm = Math.floor(limit.planMm * (layers - 1))
  const leastMm = input.leastCastDepthMm ?? input.castDepthMm * (1 - SLIGHTLY)
  return castDepthMm >= leastMm && castDepthMm > 0
    ? { castDepthMm, thinnerByMm: input.castDepthMm - castDepthMm, layers: layers - 1 }
    : null
}
