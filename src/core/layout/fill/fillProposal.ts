import type { StraightCut } from '../../cuts'
import type { Isometry, Region, SlabPoint, TablePoint } from '../../geometry'

/** A piece that is laid into a gap, in the plan's terms: its anchor names it, its pose places it. */
export interface FillPiece {
  readonly offcutKey: string
  readonly anchor: SlabPoint
  /** Pose of the slab frame in the table frame. */
  readonly pose: Isometry
  /** The cuts that set it free, in order; each divides the piece in which the anchor then lies. */
  readonly cuts: readonly StraightCut<SlabPoint>[]
  readonly onSlab: Region<SlabPoint>
  readonly onTable: Region<TablePoint>
  readonly areaMm2: number
  /** Least resin between it and other wood, exact as long as it is below the search's reach; Infinity above. */
  readonly leastJointMm: number
}

/** Why a proposal is among those to choose from. */
export type FillVirtue = 'leastResin' | 'fewestCuts' | 'noneTurnedOver'

export interface FillProposal {
  readonly virtues: readonly FillVirtue[]
  /** In the order in which they are cut: an earlier one never lies in what a later one is cut from. */
  readonly pieces: readonly FillPiece[]
  readonly cutCount: number
  readonly turnedOverCount: number
  readonly filledMm2: number
  /** Filled area less the cost of each piece: what the search maximises. */
  readonly worthMm2: number
  readonly filledShareOfVoid: number
  readonly filledShareOfReachable: number
  /** What remains of the offcuts, kerf taken off. */
  readonly leftovers: readonly { readonly offcutKey: string; readonly region: Region<SlabPoint> }[]
}

/** The proposals to choose from, the one with least resin first. */
export interface FillFinding {
  readonly proposals: readonly FillProposal[]
  readonly voidMm2: number
  readonly reachableMm2: number
}

/**
 * Resin that a proposal saves.
 * @param filledMm2 wood laid into the gaps
 * @param depthMm   how deep the gaps are filled
 */
export const litresSaved = (filledMm2: number, depthMm: number): number => (filledMm2 * depthMm) / 1e6
