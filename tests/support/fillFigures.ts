import type { Region } from '../../src/core/geometry'
import type { FillProposal, FillTask } from '../../src/core/layout'

/** Figures to reach. */
export const FILL_FIGURES = {
  firstMs: 500,
  /** Of the best known worth: after 1 s; on the mean and at worst after 10 s. */
  shareAfter1s: 0.92,
  meanAfter10s: 0.97,
  worstAfter10s: 0.92,
  planted: { 1: 0.98, 2: 0.95 },
} as const

/** Slabs of the frozen set. */
export const FROZEN_SLABS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] as const

type DistanceMm = (a: readonly Region[], b: readonly Region[]) => number

/** Least distance of any piece of a proposal to other wood, by a program that is not ours. */
export function leastClearanceMm(task: FillTask, { pieces }: FillProposal, distanceMm: DistanceMm): number {
  return Math.min(
    ...pieces.map(({ onTable }, i) => {
      const others = pieces.flatMap((piece, j) => (j === i ? [] : [piece.onTable]))
      // One face at a time: a list of faces that overlapped would not be a legal shape there.
      return Math.min(
        ...[...task.wood, ...task.closed, ...others].map((face) => distanceMm([onTable], [face])),
      )
    }),
  )
}

/** The proposal with its first piece a tenth too large: what a check must notice. */
export function spoilt(proposal: FillProposal): FillProposal {
  return {
    ...proposal,
    pieces: proposal.pieces.map((piece, i) =>
      i > 0
        ? piece
        : { ...piece, onTable: { ...piece.onTable, outer: grownAbout(piece.onTable.outer, 1.1) } },
    ),
  }
}

function grownAbout<P extends readonly [number, number]>(ring: readonly P[], factor: number): readonly P[] {
  const [x, y] = [0, 1].map((axis) => ring.reduce((sum, point) => sum + (point[axis] ?? 0), 0) / ring.length)
  return ring.map(
    (point) =>
      [(x ?? 0) + (point[0] - (x ?? 0)) * factor, (y ?? 0) + (point[1] - (y ?? 0)) * factor] as unknown as P,
  )
}
