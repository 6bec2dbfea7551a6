import type { CarrierShare, CuttingPlan, FormPart, FormPlan, Seats, Stance, StockSheet } from '../../form'
import type { TablePoint } from '../../geometry'
import type { ClientQuote, CostGroup, Quote, WoodMoney, WorkOrder } from '../../quote'
import type { BoardMeasure, Flattening, Species } from '../../wood'
import type { Issue } from '../issue'

export interface PieceMovement {
  readonly name: string
  /** Width across the grain as it is now. */
  readonly acrossMm: number
  /** Change from the moisture now to what the room makes of it in its dry and its damp season; negative: narrower. */
  readonly toDryMm: number
  readonly toDampMm: number
  /** From the dry season to the damp one. */
  readonly seasonMm: number
}

export interface WoodFigures {
  /** Null: the species is not in the table, and has no figures of its own. */
  readonly species: Species | null
  readonly dryFraction: number
  readonly dampFraction: number
  /** None without a species or without a reading. */
  readonly movements: readonly PieceMovement[]
  /** In a base that holds the top from its middle: at the outermost screws; null: not known. */
  readonly slotMm: number | null
  readonly conductivityWPerMK: number | null
}

export interface FlatteningFigures {
  readonly whole: Flattening | null
  /** Of each piece that is used, when it is ripped before it is flattened; null: fewer than three readings on it. */
  readonly pieces: readonly { readonly name: string; readonly flattening: Flattening | null }[]
}

export interface WeightFigures {
  readonly woodKgPerM3: number
  /** Whether the density was typed, follows from the slab on a scale or from the species, or is the usual one. */
  readonly densityFrom: 'typed' | 'weighed' | 'species' | 'usual'
  readonly slabKg: number
  /** True: weighed on a scale. */
  readonly isSlabWeighed: boolean
  /** What is used of the slab, before it is cast. */
  readonly piecesKg: readonly { readonly name: string; readonly massKg: number }[]
  /** Wood and resin as they come out of the form. */
  readonly castKg: number
  readonly topKg: number
  readonly centre: TablePoint
  readonly carriers: {
    readonly slab: readonly CarrierShare[]
    readonly cast: readonly CarrierShare[]
    readonly top: readonly CarrierShare[]
  }
}

export interface FormFigures {
  /** Null where no side of the form stands: holes alone are dammed. */
  readonly plan: FormPlan | null
  readonly parts: readonly FormPart[]
  readonly stock: readonly StockSheet[]
  readonly cutting: CuttingPlan | null
  readonly isProvenLeast: boolean
  /** Places in `parts` of what no sheet holds. */
  readonly tooLarge: readonly number[]
  readonly caulkMm: number
  /** The pieces are too heavy to be lifted in over the sides by one person: a side is put on last. */
  readonly buildRound: boolean
}

export interface StandingFigures {
  readonly feet: readonly TablePoint[]
  /** Null where the insets leave nothing to stand on. */
  readonly stance: Stance | null
  readonly seats: Seats
  /** Null without stiffness. */
  readonly middleSagMm: number | null
  readonly endSagMm: number | null
  /** Null: not measured. */
  readonly door: boolean | null
  readonly lift: boolean | null
  readonly turn: boolean | null
}

export interface PriceFigures {
  readonly quote: Quote
  readonly client: ClientQuote
  readonly measure: BoardMeasure
  /** Null where the slab's price is not known. */
  readonly wood: WoodMoney | null
}

export interface ShoppingItem {
  readonly group: CostGroup
  readonly name: string
  readonly quantity: number
  readonly unit: string
}

export interface BuildResult {
  readonly wood: WoodFigures
  readonly flattening: FlatteningFigures
  readonly weight: WeightFigures
  /** Null where there is nothing to hold back. */
  readonly form: FormFigures | null
  readonly standing: StandingFigures
  readonly work: WorkOrder
  readonly price: PriceFigures
  readonly shopping: readonly ShoppingItem[]
  readonly issues: readonly Issue[]
}
