/** Usual space between wood and form: common practice, no source. */
export const USUAL_CLEARANCE_MM = 3

/** Resin that a seal coat takes: common practice, no source. End grain and punky edges take more. */
export const USUAL_SEAL_COAT_G_PER_M2 = 250

/**
 * Resin in the narrow space between wood and form.
 * @param contactLengthMm  length of wood that faces the form
 * @returns litres
 * Rules: RES-14.
 */
export const clearanceLitres = (contactLengthMm: number, clearanceMm: number, depthMm: number): number =>
  (contactLengthMm * clearanceMm * depthMm) / 1e6

/**
 * Resin over the whole face.
 * @returns litres
 * Rules: RES-14.
 */
export const floodLitres = (faceAreaMm2: number, depthMm: number): number => (faceAreaMm2 * depthMm) / 1e6

/**
 * Space under a slab cupped evenly across its width.
 * @param riseMm  height of the hollow in its middle
 * @returns litres
 * Method: a parabola covers two thirds of its box (Archimedes).
 * Rules: RES-14.
 */
export const underCupLitres = (lengthMm: number, widthMm: number, riseMm: number): number =>
  ((2 / 3) * lengthMm * widthMm * riseMm) / 1e6

/**
 * Resin for a seal coat over wetted edges and faces.
 * @returns kilograms
 * Rules: RES-14.
 */
export const sealCoatKg = (wettedAreaMm2: number, gramsPerM2 = USUAL_SEAL_COAT_G_PER_M2): number =>
  ((wettedAreaMm2 / 1e6) * gramsPerM2) / 1000

/** One-sigma doubts of a volume that is area × depth. */
export interface VolumeDoubts {
  readonly areaMm2: number
  readonly areaSigmaMm2: number
  readonly depthMm: number
  readonly depthSigmaMm: number
  /** Half the lean of edges that is not known: adds length × depth² / 2 × tan. */
  readonly edgeLengthMm: number
  readonly leanSigmaRad: number
  /** Form out of level, mm over its whole. */
  readonly levelSigmaMm: number
}

/**
 * ± of a volume, from photo, thickness, bevel and level taken as independent.
 * @returns litres, one sigma
 * Method: first-order propagation: the parts are added in squares.
 * Rules: RES-14.
 */
export function volumeSigmaLitres(doubts: VolumeDoubts): number {
  const { areaMm2, areaSigmaMm2, depthMm, depthSigmaMm, edgeLengthMm, leanSigmaRad, levelSigmaMm } = doubts
  return (
    Math.hypot(
      areaSigmaMm2 * depthMm,
      areaMm2 * depthSigmaMm,
      (edgeLengthMm * depthMm * depthMm * leanSigmaRad) / 2,
      (areaMm2 * levelSigmaMm) / 2,
    ) / 1e6
  )
}
