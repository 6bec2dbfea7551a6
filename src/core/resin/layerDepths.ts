import type { HandLayer } from './pourPlanInput'

export interface DepthWish {
  readonly castDepthMm: number
  readonly limitMm: number
  /** At least so many layers. */
  readonly leastCount: number
  readonly hand: readonly HandLayer[]
}

/** Shares of a millimetre that are not worth a layer. */
const LEAST_REST_MM = 0.05

/**
 * Depth of each layer: those set by hand as they are, the rest in the fewest equal layers within the limit.
 * @returns depths from the bottom up, mm; they add up to the cast unless those by hand alone exceed it
 * Rules: RES-17.
 */
export function layerDepths(wish: DepthWish): readonly number[] {
  const fixed = wish.hand.flatMap(({ depthMm }) => (depthMm === null ? [] : [depthMm]))
  const restMm = wish.castDepthMm - fixed.reduce((sum, depthMm) => sum + depthMm, 0)
  const count =
    restMm <= LEAST_REST_MM
      ? 0
      : Math.max(1, Math.ceil(restMm / wish.limitMm - 1e-9), wish.leastCount - fixed.length)
  const equalMm = count === 0 ? 0 : restMm / count
  const depths: number[] = []
  let left = count
  for (const { depthMm } of wish.hand) {
    if (depthMm !== null) depths.push(depthMm)
    else if (left > 0) {
      depths.push(equalMm)
      left -= 1
    }
  }
  return [...depths, ...Array.from({ length: left }, () => equalMm)]
}
