import type { EdgeSet } from './edgeSet'

/** A strip by its direction and its middle line's offset from the pivot. */
export interface StripAt {
  readonly angleRad: number
  readonly offsetMm: number
}

/** A box of strips: directions and offsets about a middle, with what is known of the runs in them. */
export interface StripBox extends StripAt {
  readonly angleHalfRad: number
  readonly offsetHalfMm: number
  /** No strip of the box has a longer run, mm. */
  readonly bound: number
  /** All edges that reach into any strip of the box, and maybe others. */
  readonly edges: EdgeSet
}

/** The two halves of a box, across the side that blurs the strip more. */
export function halves(box: StripBox, edges: EdgeSet): readonly StripBox[] {
  const { angleRad, angleHalfRad, offsetMm, offsetHalfMm, bound } = box
  // A turn moves the ends of a run by its half length.
  if (angleHalfRad * bound * 0.5 > offsetHalfMm) {
    const half = angleHalfRad / 2
    return [-half, half].map((d) => ({ ...box, angleRad: angleRad + d, angleHalfRad: half, edges }))
  }
  const half = offsetHalfMm / 2
  return [-half, half].map((d) => ({ ...box, offsetMm: offsetMm + d, offsetHalfMm: half, edges }))
}

/** A stretch of a strip, from one u to a greater one, mm along its line from the foot of the pivot. */
export interface StripRun {
  readonly fromMm: number
  readonly toMm: number
}

export const runLengthMm = ({ fromMm, toMm }: StripRun): number => toMm - fromMm

/** How long a table may be on the strips of one width: of whole wood (`clearMeter`) or with resin (`resinMeter`). */
export interface StripMeter {
  /** Length of wood and resin together that nothing exceeds, mm. */
  readonly greatestMm: number
  /** How far beyond the wood a strip's middle may lie, mm. */
  readonly overhangMm: number
  /**
   * The longest run on one strip.
   * @param edges     those that may reach into it
   * @param atLeastMm shorter runs are not of interest, > 0
   */
  longest(at: StripAt, edges: EdgeSet, atLeastMm: number): StripRun | null
  /**
   * How long a run on any strip of a box may be.
   * @param needMm shorter runs are not of interest
   * @returns a bound, mm; at most needMm when no strip of the box has a longer run
   */
  bound(box: StripBox, needMm: number): number
  /** The edges that the strips of a box need; the box's own when there is little to leave out. */
  reaching(box: StripBox): EdgeSet
}
