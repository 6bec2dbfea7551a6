import { InvariantError } from '../units'

export interface GapToFill {
  readonly kind: 'edge' | 'void'
  readonly areaMm2: number
  /** Depth of the hole, mm; null: as deep as the cast. */
  readonly depthMm: number | null
}

export interface CastChoice {
  /** Depth of the cast, mm. */
  readonly castThicknessMm: number
  readonly slabThicknessMm: number
  /** Wood in the blank, mm²: what a cast thicker than the slab floods. */
  readonly woodAreaMm2: number
  /** Left in buckets, as a share of what fills the gaps. */
  readonly lossFraction: number
  /** Null: not known, so the weight is not either. */
  readonly densityKgPerM3: number | null
}

export interface GapResin {
  readonly edgeGapLitres: number
  readonly voidLitres: number
  /** Over the wood, where the cast is thicker than the slab. */
  readonly floodLitres: number
  readonly gapLitres: number
  readonly mixLitres: number
  readonly mixKg: number | null
}

const MM3_PER_LITRE = 1_000_000

/**
 * Resin that fills the gaps of a cast, edges and voids taken as vertical.
 * @param gaps   areas in mm²; a hole with a depth of its own is filled from the top, so only that depth counts
 * @param choice castThicknessMm > 0
 * @returns litres and kilograms; linear in the areas
 * @throws InvariantError when a thickness or the density is not finite and > 0
 * Method: area × depth; 1 L = 1 000 000 mm³ exactly.
 * Rules: RES-1, RES-2, RES-3.
 */
export function gapResin(gaps: readonly GapToFill[], choice: CastChoice): GapResin {
  const { castThicknessMm, slabThicknessMm, densityKgPerM3 } = choice
  const figures = { castThicknessMm, slabThicknessMm, densityKgPerM3: densityKgPerM3 ?? 1 }
  for (const [what, value] of Object.entries(figures)) {
    if (!(Number.isFinite(value) && value > 0))
      throw new InvariantError('must be more than zero', { what, value })
  }
  const overWoodMm = Math.max(0, castThicknessMm - slabThicknessMm)
  const litresOf = (kind: GapToFill['kind']): number =>
    gaps
      .filter((gap) => gap.kind === kind)
      .reduce((sum, gap) => sum + gap.areaMm2 * filledDepthMm(gap, castThicknessMm, overWoodMm), 0) /
    MM3_PER_LITRE
  const edgeGapLitres = litresOf('edge')
  const voidLitres = litresOf('void')
  const floodLitres = (choice.woodAreaMm2 * overWoodMm) / MM3_PER_LITRE
  const gapLitres = edgeGapLitres + voidLitres + floodLitres
  const mixLitres = gapLitres * (1 + choice.lossFraction)
  return {
    edgeGapLitres,
    voidLitres,
    floodLitres,
    gapLitres,
    mixLitres,
    mixKg: densityKgPerM3 === null ? null : (mixLitres * densityKgPerM3) / 1000,
  }
}

/** A hole that does not go through is filled to the cast's surface; a through hole is as deep as the cast. */
function filledDepthMm(gap: GapToFill, castThicknessMm: number, overWoodMm: number): number {
  return gap.depthMm === null ? castThicknessMm : Math.min(castThicknessMm, gap.depthMm + overWoodMm)
}
