import { InvariantError } from '../units'

/** Standard gravity, m/s²: CGPM 1901, from memory. */
const GRAVITY_M_PER_S2 = 9.80665

/** A piece of wood in the form. */
export interface FormPiece {
  readonly name: string
  readonly areaMm2: number
  readonly thicknessMm: number
  /** As it lies in the form, with its moisture. */
  readonly densityKgPerM3: number
  /** Length of the piece along the form: how many bars may bear on it. */
  readonly lengthMm: number
}

/** @returns whether a piece has an area, a thickness, a length and a density */
export const isUsablePiece = ({ areaMm2, thicknessMm, densityKgPerM3, lengthMm }: FormPiece): boolean =>
  [areaMm2, thicknessMm, densityKgPerM3, lengthMm].every((value) => Number.isFinite(value) && value > 0)

export interface UpliftAtDepth {
  /** Resin above the underside of the piece. */
  readonly resinDepthMm: number
  /** Upward less the piece's weight, newton; negative: it stays down by itself. */
  readonly forceN: number
  readonly kgfPerM2: number
}

export interface HoldDown {
  readonly pieceName: string
  /** One for each layer, as if resin gets beneath the whole piece. */
  readonly byLayer: readonly UpliftAtDepth[]
  /** Depth of resin at which the piece begins to float; null: heavier than resin, or never within its thickness. */
  readonly floatsFromMm: number | null
  /** Greatest force over all layers, with the margin; 0 when it stays down. */
  readonly holdN: number
  readonly bars: number
  readonly forcePerBarN: number
  /** Least contact under each bar, so that the wood is not dented. */
  readonly contactMm2PerBar: number
}

/** Half as much again as the resin lifts. No source: a bar slips or is set a little loose. */
const HOLD_MARGIN = 1.5
/** Pressure that even soft wood across the grain bears without a dent, N/mm². Far below handbook values; no source. */
const CONTACT_N_PER_MM2 = 0.2
const MM2_PER_M2 = 1e6

/**
 * Lift on a piece of wood by the resin beneath and beside it.
 * @returns kg-force per m²: ρ_resin·min(d, t) − ρ_wood·t; negative where the piece stays down
 * @throws InvariantError when a figure is not finite or a thickness or density not above zero
 * Method: Archimedes. A piece sealed to the base has no lift until resin gets under it; that is not counted on.
 * Rules: RES-19.
 */
export function upliftKgfPerM2(
  resinDepthMm: number,
  thicknessMm: number,
  woodKgPerM3: number,
  resinKgPerM3: number,
): number {
  for (const [what, value] of Object.entries({ thicknessMm, woodKgPerM3, resinKgPerM3 })) {
    if (!(Number.isFinite(value) && value > 0))
      throw new InvariantError('must be more than zero', { what, value })
  }
  return (resinKgPerM3 * Math.min(resinDepthMm, thicknessMm) - woodKgPerM3 * thicknessMm) / 1000
}

/**
 * Lift on each piece as the layers rise, and the bars that hold it down.
 * @param levelsMm  height of the resin after each layer, mm above the underside of the pieces
 * @param barEveryMm  spacing of bars across the form
 * Rules: RES-19.
 */
export function holdDown(
  pieces: readonly FormPiece[],
  levelsMm: readonly number[],
  resinKgPerM3: number,
  barEveryMm: number,
): readonly HoldDown[] {
  return pieces.map((piece) => {
    const { thicknessMm, densityKgPerM3, areaMm2 } = piece
    const byLayer = levelsMm.map((resinDepthMm) => {
      const kgfPerM2 = upliftKgfPerM2(resinDepthMm, thicknessMm, densityKgPerM3, resinKgPerM3)
      return { resinDepthMm, kgfPerM2, forceN: (kgfPerM2 * GRAVITY_M_PER_S2 * areaMm2) / MM2_PER_M2 }
    })
    const holdN = HOLD_MARGIN * Math.max(0, ...byLayer.map(({ forceN }) => forceN))
    // Two bars at least: a piece under one bar tips.
    const bars = holdN === 0 ? 0 : Math.max(2, Math.ceil(piece.lengthMm / barEveryMm))
    const floatsFromMm = (densityKgPerM3 * thicknessMm) / resinKgPerM3
    return {
      pieceName: piece.name,
      byLayer,
      floatsFromMm: floatsFromMm < thicknessMm ? floatsFromMm : null,
      holdN,
      bars,
      forcePerBarN: bars === 0 ? 0 : holdN / bars,
      contactMm2PerBar: bars === 0 ? 0 : holdN / bars / CONTACT_N_PER_MM2,
    }
  })
}

/** The base of the form between its sides. */
export interface FormBase {
  readonly spanMm: number
  readonly thicknessMm: number
  /** Stiffness of the board; 3000 for particle board, from memory. */
  readonly elasticityNPerMm2: number
  readonly barEveryMm: number
}

/**
 * How far the edges of the base are drawn up where a bar pulls at them and the resin presses on its middle.
 * @param barForceN  force of one bar on the pieces
 * @returns mm; 0 when the resin holds the base down
 * Method: half the base as a cantilever from its middle, half a bar's force at its tip, less the resin's own even
 * load: F·a³/(6EI) − p·s·a⁴/(8EI), I = s·t³/12 (beam formulas of any handbook, from memory). The weight of the board
 * and the sides is left out, so the figure is on the safe side.
 * Rules: RES-19.
 */
export function baseLiftMm(
  base: FormBase,
  barForceN: number,
  resinDepthMm: number,
  resinKgPerM3: number,
): number {
  const half = base.spanMm / 2
  const inertia = (base.barEveryMm * base.thicknessMm ** 3) / 12
  const stiffness = base.elasticityNPerMm2 * inertia
  const pressureNPerMm2 = sidePressurePa(resinDepthMm, resinKgPerM3) / 1e6
  const up = (barForceN * half ** 3) / (6 * stiffness)
  const down = (pressureNPerMm2 * base.barEveryMm * half ** 4) / (8 * stiffness)
  return Math.max(0, up - down)
}

/**
 * Pressure of liquid resin at a depth.
 * @returns pascal: ρ·g·h
 * Rules: RES-19.
 */
export const sidePressurePa = (depthMm: number, resinKgPerM3: number): number =>
  (resinKgPerM3 * GRAVITY_M_PER_S2 * depthMm) / 1000

/**
 * Push of liquid resin on a metre of a form's side, at a third of its depth.
 * @returns N/m: ρ·g·h²/2
 * Rules: RES-19.
 */
export const sideThrustNPerM = (depthMm: number, resinKgPerM3: number): number =>
  (sidePressurePa(depthMm, resinKgPerM3) * depthMm) / 2000
