import type { PxPoint, Region, Ring, SlabPoint, TablePoint } from '../geometry'
import type { Issue } from './issue'
import type { TableSideName } from './schema'

/** A figure, the issues that keep it from being worked out, or a promise that a worker is on it. */
export type Part<T> =
  | { readonly state: 'ready'; readonly value: T }
  | { readonly state: 'blocked'; readonly because: readonly string[] }
  | { readonly state: 'pending' }

/** Row-major 3×3 matrix of a plane homography. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number]

export interface TapedDistanceCheck {
  readonly distanceId: string
  readonly fromName: string
  readonly toName: string
  readonly statedMm: number
  /** Length between the solved positions of the two marks. */
  readonly foundMm: number
}

export interface SlabScaleResult {
  readonly photoId: string
  /** Photo pixel → slab frame in mm, and back. */
  readonly pxToSlab: Matrix3
  readonly slabToPx: Matrix3
  readonly markPositions: readonly {
    readonly markId: string
    readonly name: string
    readonly at: SlabPoint
  }[]
  readonly distanceChecks: readonly TapedDistanceCheck[]
  /** Photo pixels per mm near the middle of the marks. */
  readonly pxPerMm: number
  readonly datum: { readonly fromPx: PxPoint; readonly toPx: PxPoint; readonly lengthMm: number }
}

export interface SlabVoid {
  readonly traceId: string
  readonly name: string
  readonly ring: Ring<SlabPoint>
  readonly areaMm2: number
  /** Depth of the hole from the top face, mm; a through hole has the slab's thickness. */
  readonly depthMm: number
  readonly through: boolean
}

export interface SlabShapeResult {
  readonly outline: Ring<SlabPoint>
  readonly voids: readonly SlabVoid[]
  /** Top face with through and partial voids taken out. */
  readonly wood: readonly Region<SlabPoint>[]
  readonly grossAreaMm2: number
  readonly woodAreaMm2: number
  /** Extent along and across the datum. */
  readonly lengthMm: number
  readonly widthMm: number
}

export interface SlabResult {
  readonly slabId: string
  readonly scale: Part<SlabScaleResult>
  readonly shape: Part<SlabShapeResult>
}

export interface FootprintResult {
  readonly slabId: string
  /** The finished outline and the blank (finished + oversize) in both frames. A live side's blank reaches past the slab. */
  readonly finished: Ring<TablePoint>
  readonly blank: Ring<TablePoint>
  readonly finishedOnSlab: Ring<SlabPoint>
  readonly blankOnSlab: Ring<SlabPoint>
  readonly finishedLengthMm: number
  readonly finishedWidthMm: number
}

/** A place on the slab as it is set out at the bench. */
export interface StationPoint {
  readonly at: SlabPoint
  /** Along the datum from its first anchor; negative lies before it. */
  readonly alongMm: number
  /** From the datum; positive lies to the right of one who looks along it (y down in the slab frame). */
  readonly offsetMm: number
  /** Taped distances from the marks, nearest first. */
  readonly fromMarks: readonly { readonly markName: string; readonly distanceMm: number }[]
}

export interface SetOutCut {
  readonly cutId: string
  /** 1-based place in the order of work. */
  readonly number: number
  readonly side: TableSideName | null
  readonly from: StationPoint
  readonly to: StationPoint
  readonly lengthMm: number
  readonly kerfMm: number
  /** Seen when looking from `from` to `to`. */
  readonly wasteSide: 'left' | 'right'
  readonly angleToDatumRad: number
  /** One taped length that is not used to set the line out: it must agree. */
  readonly check: { readonly fromName: string; readonly toPoint: 'from' | 'to'; readonly distanceMm: number }
  /** Names of the pieces that fall off. */
  readonly yields: readonly string[]
}

export interface SlabPiece {
  /** Stable within a result; the id of a named piece, else made from its place in the list. */
  readonly key: string
  readonly pieceId: string | null
  readonly name: string
  readonly region: Region<SlabPoint>
  readonly areaMm2: number
  /** A point well inside, for labels and for naming the piece. */
  readonly anchor: SlabPoint
  readonly use: 'table' | 'placed' | 'offcut'
}

export interface PiecesResult {
  readonly slabId: string
  readonly pieces: readonly SlabPiece[]
  readonly cuts: readonly SetOutCut[]
  readonly kerfAreaMm2: number
}

export interface PlacedPiece {
  readonly placementId: string
  readonly pieceId: string
  readonly name: string
  /** The whole piece in the table frame, and the part of it that stays in the blank. */
  readonly whole: Region<TablePoint>
  readonly inBlank: readonly Region<TablePoint>[]
  readonly areaInBlankMm2: number
}

export interface Gap {
  readonly kind: 'edge' | 'void'
  readonly region: Region<TablePoint>
  readonly areaMm2: number
  /** Depth to be filled, mm. */
  readonly depthMm: number
}

export interface SideGap {
  readonly side: TableSideName
  /** How far the wood stops short of the finished side, at most, and along how much of it. */
  readonly greatestDepthMm: number
  readonly lengthMm: number
}

export interface KeptEdge {
  readonly side: TableSideName
  readonly leastWidthMm: number
  readonly meanWidthMm: number
  /** Where it is narrowest, along the table. */
  readonly leastAtMm: number
}

export interface CoverageResult {
  readonly finishedAreaMm2: number
  readonly blankAreaMm2: number
  /** The slab's own wood in the finished outline, and in the blank. */
  readonly woodInFinishedMm2: number
  readonly woodInBlankMm2: number
  readonly mainWood: readonly Region<TablePoint>[]
  readonly placed: readonly PlacedPiece[]
  readonly placedWoodInBlankMm2: number
  /** What resin fills in the blank. Partial voids are voids with their own depth. */
  readonly gaps: readonly Gap[]
  readonly edgeGapAreaMm2: number
  readonly voidGapAreaMm2: number
  readonly sideGaps: readonly SideGap[]
  readonly keptEdges: readonly KeptEdge[]
  /** From the finished outline to the slab's edge at the tightest place; null where wood is short. */
  readonly spare: { readonly distanceMm: number; readonly at: TablePoint } | null
  readonly slabWoodAreaMm2: number
  /** The slab's wood that ends neither in the blank nor in kerf. */
  readonly leftOverAreaMm2: number
  readonly leftOverFraction: number
  readonly kerfAreaMm2: number
}

export type Verdict =
  | { readonly kind: 'covers'; readonly spareMm: number }
  | {
      readonly kind: 'covers-with-voids'
      readonly spareMm: number
      readonly voids: number
      readonly voidAreaMm2: number
    }
  | {
      readonly kind: 'needs-fill'
      readonly edgeGapAreaMm2: number
      readonly voids: number
      readonly filledShare: number
      readonly worstSide: TableSideName
      readonly depthMm: number
    }
  | {
      readonly kind: 'short'
      readonly side: TableSideName
      readonly depthMm: number
      readonly lengthMm: number
    }
  | { readonly kind: 'off-slab' }

export interface ResinResult {
  readonly castThicknessMm: number
  readonly edgeGapLitres: number
  readonly voidLitres: number
  /** What fills the gaps, without loss. */
  readonly gapLitres: number
  /** What is to be mixed, with loss. */
  readonly mixLitres: number
  readonly mixKg: number
  readonly costCents: number | null
}

export interface OptionResult {
  readonly optionId: string
  readonly footprint: Part<FootprintResult>
  readonly pieces: Part<PiecesResult>
  readonly coverage: Part<CoverageResult>
  readonly verdict: Part<Verdict>
  readonly resin: Part<ResinResult>
}

export interface PlanResult {
  readonly slabs: ReadonlyMap<string, SlabResult>
  readonly options: ReadonlyMap<string, OptionResult>
  readonly issues: readonly Issue[]
}
