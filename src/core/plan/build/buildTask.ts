import type { PourTimes } from '../../quote'
import type { Option, Plan, Slab } from '../schema'
import type { CoverageResult, FootprintResult, PiecesResult, ResinResult } from '../tableResult'

/** As much of a slab's shape as weight and price follow from. */
export interface SlabExtent {
  readonly lengthMm: number
  readonly widthMm: number
  readonly grossAreaMm2: number
  readonly woodAreaMm2: number
}

/** All that form, weight, stance, work and price of an option follow from: plain data that a worker can be sent. */
export interface BuildTask {
  readonly optionId: string
  readonly slab: Pick<Slab, 'id' | 'species' | 'moistureFraction' | 'thicknessMm' | 'priceCents' | 'wood'>
  readonly option: Pick<
    Option,
    'table' | 'footprint' | 'placements' | 'resin' | 'room' | 'form' | 'standing' | 'quote'
  >
  readonly shop: Plan['shop']
  readonly shape: SlabExtent
  readonly footprint: FootprintResult
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult
  readonly resin: ResinResult
  /** Null: the plan of the pour is not known, or on its way. */
  readonly pour: PourTimes | null
}
