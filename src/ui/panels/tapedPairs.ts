import type { Slab } from '../../core/plan'

export interface MarkName {
  readonly id: string
  readonly name: string
}

export interface TapedPair {
  readonly from: MarkName
  readonly to: MarkName
  readonly taped: { readonly id: string; readonly lengthMm: number } | null
}

/** Marks of which the distances are taped: those of boards and rules have theirs from its size. */
export function tapedMarks(slab: Slab): readonly MarkName[] {
  const corners = new Set([
    ...slab.boards.flatMap(({ cornerIds }) => cornerIds),
    ...slab.rules.flatMap(({ endIds }) => endIds),
  ])
  return slab.marks.filter(({ id }) => !corners.has(id))
}

/** All pairs of marks, with the distance that was taped between them if any. */
export function tapedPairs(slab: Slab): readonly TapedPair[] {
  const marks = tapedMarks(slab)
  return marks.flatMap((from, index) =>
    marks.slice(index + 1).map((to) => {
      const taped = slab.tapedDistances.find(
        ({ markIds }) => markIds.includes(from.id) && markIds.includes(to.id),
      )
      return { from, to, taped: taped ?? null }
    }),
  )
}
