import type { Option } from '../schema'

interface CastLevels {
  /** Height of the cast above the floor of the form, without a flood over it. */
  readonly castThicknessMm: number
  /** With the flood, which lies over wood and cast alike. */
  readonly levelMm: number
}

/** How high the form is filled. Rules: POUR-1. */
export function castLevels(resin: Option['resin'], slabThicknessMm: number): CastLevels {
  const castThicknessMm = resin.castThicknessMm ?? slabThicknessMm
  const floodedMm = Math.max(castThicknessMm, slabThicknessMm) + (resin.floodMm ?? 0)
  return { castThicknessMm, levelMm: resin.floodMm === null ? castThicknessMm : floodedMm }
}
