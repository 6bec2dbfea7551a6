import type { HandLayer, PourPlanInput } from './pourPlanInput'

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

/** Thinnest layer that is planned for the sake of mass where the sheet names none, mm. No source. */
const THIN_MM = 5

/**
 * Layers needed so that none is deeper than the limit or heavier than the sheet's greatest pour; the mass is let go
 * where its layers would get thinner than the sheet's least.
 * @param massKg  of the whole cast; null: not known
 * Rules: RES-17.
 */
export function leastLayers(
  { sheet }: Pick<PourPlanInput, 'sheet'>,
  massKg: number | null,
  castDepthMm: number,
  limitMm: number,
): number {
  const forDepth = Math.ceil(castDepthMm / limitMm - 1e-9)
  if (sheet.greatestMassKg === null || massKg === null) return forDepth
  const forMass = Math.ceil(massKg / sheet.greatestMassKg - 1e-9)
  const leastMm = sheet.leastLayerMm ?? Math.min(THIN_MM, limitMm)
  return castDepthMm / forMass >= leastMm ? Math.max(forDepth, forMass) : forDepth
}
