import { InvariantError } from '../units'

/** A top as a beam along its length. */
export interface TopBeam {
  readonly widthMm: number
  readonly thicknessMm: number
  readonly elasticityGPa: number
}

function stiffnessNMm2({ widthMm, thicknessMm, elasticityGPa }: TopBeam): number {
  if (!(widthMm > 0 && thicknessMm > 0 && elasticityGPa > 0))
    throw new InvariantError('a beam has a size and a stiffness', { widthMm, thicknessMm, elasticityGPa })
  return (elasticityGPa * 1000 * widthMm * thicknessMm ** 3) / 12
}

export interface BeamLoad {
  /** Spread evenly over the length, newton in all. */
  readonly evenN: number
  /** In the middle of a span, or at the tip of an overhang, newton. */
  readonly pointN: number
}

/**
 * How far the middle of a top sinks between two feet.
 * @returns mm, short of creep (wood under a load for years gives about as much again; from memory)
 * @throws InvariantError when a size or the stiffness is not above zero
 * Method: beam formulas of any handbook: 5·W·L³/384EI and P·L³/48EI; shear left out (it is in tabulated moduli).
 * Rules: WOOD-10.  Check values: wood.json "sag-…".
 */
export const spanSagMm = (beam: TopBeam, spanMm: number, { evenN, pointN }: BeamLoad): number =>
  (((5 / 384) * evenN + pointN / 48) * spanMm ** 3) / stiffnessNMm2(beam)

/**
 * How far the end of an overhang sinks, as if it were held fast at the foot.
 * @returns mm: W·L³/8EI and P·L³/3EI
 * Rules: WOOD-10.
 */
export const overhangSagMm = (beam: TopBeam, overhangMm: number, { evenN, pointN }: BeamLoad): number =>
  ((evenN / 8 + pointN / 3) * overhangMm ** 3) / stiffnessNMm2(beam)
