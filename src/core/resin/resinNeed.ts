import { mixParts, type MixShares } from './mixShares'
import type { ResinNeed } from './pourPlanResult'

/**
 * What is mixed to fill a volume.
 * @param lossFraction  left in buckets and lost, as a share of what fills the gaps
 * Rules: RES-3, RES-10.
 */
export function resinNeed(lossFraction: number, shares: MixShares, gapLitres: number): ResinNeed {
  const mixLitres = gapLitres * (1 + lossFraction)
  const density = shares.mixedDensityKgPerM3
  return {
    gapLitres,
    mixLitres,
    massKg: density === null ? null : (mixLitres * density) / 1000,
    parts: mixParts(shares, mixLitres),
  }
}
