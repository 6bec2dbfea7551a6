import type { Isometry } from '../../geometry'
import type { GrainLimit } from './angleRange'
import type { SearchWood } from './searchWood'

/** A table between two crosscuts, one or both of whose long sides keep their live edges. */
export interface KeptTable {
  readonly lengthMm: number
  readonly leastWidthMm: number
  readonly meanWidthMm: number
  readonly liveSides: readonly ('far' | 'near')[]
  /** Pose of the table frame: from y = 0 to y = meanWidthMm; a live edge runs to both sides of its line. */
  readonly pose: Isometry
}

export interface KeptTableTask {
  readonly wood: SearchWood
  /** Which long sides keep their live edge; with one, the other is sawn straight through whole wood. */
  readonly keep: 'both' | 'one'
  /** The table is nowhere narrower, mm, square to its length. */
  readonly leastWidthMm: number
  readonly grain: GrainLimit | null
  /** The search ends when nothing can be longer than the answer by more than this, mm; at least 2. */
  readonly toleranceMm: number
}
