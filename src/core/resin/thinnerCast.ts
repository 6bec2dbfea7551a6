import type { DepthLimit } from './depthLimit'
import { leastLayers } from './layerDepths'
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
 * @param massKg  of the whole cast; null: not known
 * @returns the thickest such cast, whole mm; null where there is none, where the layers were set by hand, or where the
 * cast would get too thin
 * Rules: RES-17.
 */
export function thinnerCast(
  input: PourPlanInput,
  limit: DepthLimit,
  massKg: number | null,
  layers: number,
): ThinnerCast | null {
  const { castDepthMm } = input
  const needed = (depthMm: number): number =>
    leastLayers(input, massKg === null ? null : (massKg * depthMm) / castDepthMm, depthMm, limit.planMm)
  // A layer that was added by hand, or because the stack ran hot, is not saved by a thinner cast.
  const isFree = input.layers.every(({ depthMm }) => depthMm === null)
  if (layers < 2 || !isFree || layers !== needed(castDepthMm)) return null
  const leastMm = input.leastCastDepthMm ?? castDepthMm * (1 - SLIGHTLY)
  for (let depthMm = Math.ceil(castDepthMm) - 1; depthMm >= Math.max(1, leastMm); depthMm -= 1) {
    if (needed(depthMm) < layers)
      return { castDepthMm: depthMm, thinnerByMm: castDepthMm - depthMm, layers: needed(depthMm) }
  }
  return null
}
