import type { SetOutLine } from '../cuts'
import type { Region, Ring, SlabPoint, TablePoint } from '../geometry'
import type { Coverage } from '../layout'
import type { GapResin } from '../resin'
import type { TableSideName } from './schema'

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

export interface SetOutCut extends SetOutLine {
  readonly cutId: string
  /** 1-based place in the order of work, among the cuts that touch wood. */
  readonly number: number
  /** The side of the footprint that it follows; null for a line of its own. */
  readonly side: TableSideName | null
  readonly kerfMm: number
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
  /** The cut that set it free; null for uncut wood. */
  readonly cutId: string | null
}

export interface PiecesResult {
  readonly slabId: string
  readonly pieces: readonly SlabPiece[]
  readonly cuts: readonly SetOutCut[]
  readonly kerfAreaMm2: number
  /** All leaves of the piece tree, also those too small for a name. */
  readonly pieceAreaMm2: number
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

export interface CoverageResult extends Coverage {
  /** The pieces that are laid into the table, with the whole of each in the table frame. */
  readonly placed: readonly PlacedPiece[]
  readonly edgeGapAreaMm2: number
  readonly voidGapAreaMm2: number
  readonly slabWoodAreaMm2: number
  readonly kerfAreaMm2: number
  /** The slab's wood that ends neither in the blank nor in kerf, and its share of the slab's wood. */
  readonly leftOverAreaMm2: number
  readonly leftOverFraction: number
}

export interface ResinResult extends GapResin {
  readonly castThicknessMm: number
  /** Height to which the form is filled: the cast, with the flood over it. */
  readonly levelMm: number
  /** Along the form, and under a cupped slab. */
  readonly clearanceLitres: number
  readonly underLitres: number
  /** What the flood over the face adds; part of the litres above. */
  readonly floodCoatLitres: number
  /** Sum of what is filled; `gapLitres` is this, or what was measured on the dry fit. */
  readonly computedLitres: number
  readonly isMeasured: boolean
  /** For the seal coat, which is mixed apart; 0: none. */
  readonly sealKg: number
  /** Of the packs to buy; null where the sheet names none. */
  readonly costCents: number | null
}
