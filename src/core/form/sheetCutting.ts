import { InvariantError } from '../units'
import { above, addSmallest, beside, type CutBox, fitsIn, partBoxes } from './cutBox'
import { cutDiagram } from './cutDiagram'
import {
  burdenOf,
  type CuttingPlan,
  cuttingPlan,
  type CuttingTask,
  type SheetPart,
  type SheetUse,
} from './cuttingPlan'
import { greedyCutting } from './greedyCutting'
import { countedParts, PartCounts } from './partCounts'
import type { StockSheet } from './sheetStock'

export interface CuttingState {
  readonly plan: CuttingPlan | null
  readonly isDone: boolean
  /** True: no cutting from edge to edge costs less (of equal cost: takes less sheet). */
  readonly isProvenLeast: boolean
  readonly evaluations: number
  /** Parts that lie on no sheet, whatever way they are turned. */
  readonly tooLarge: readonly number[]
}

export interface SheetCutting {
  /** @param evaluations about how many pairs of boxes to look at; Infinity: to the end */
  step(evaluations: number): CuttingState
}

interface Best {
  readonly burden: number
  /** Stock and set of each sheet, the last one first. */
  readonly stock: number
  readonly set: number
  readonly before: Best | null
}

/** Most sets that are looked at: beyond it the plan at hand stays, not proven. */
const GREATEST_SETS = 20_000

/**
 * The cheapest way to saw parts out of sheets by cuts from edge to edge, with kerf; parts may be turned.
 * @param task sizes > 0; stock with a count is used up to it, what costs nothing first
 * @returns a search in steps: a plan at once, and a proof when it comes to its end
 * @throws InvariantError when a size is not above zero or a kerf below
 * Method: exact. For every set of parts (equal ones counted) the smallest boxes that it can be sawn from are built up
 * from two smaller sets side by side or one above the other; then the cheapest sheets that hold all sets, each sheet one
 * set. Any cutting from edge to edge is such a tree.
 * Rules: FORM-5, FORM-6, FORM-7.
 */
export function sheetCutting(task: CuttingTask): SheetCutting {
  const { parts, stock, kerfMm } = task
  for (const { lengthMm, widthMm } of [...parts, ...stock])
    if (!(lengthMm > 0 && widthMm > 0)) throw new InvariantError('a sheet has a size', { lengthMm, widthMm })
  if (!(kerfMm >= 0)) throw new InvariantError('a kerf is no less than nothing', { kerfMm })
  const holds = ({ lengthMm, widthMm }: SheetPart): boolean =>
    partBoxes(0, lengthMm, widthMm).some((box) => stock.some((sheet) => liesOn(box, sheet)))
  const tooLarge = parts.flatMap((part, place) => (holds(part) ? [] : [place]))
  const state = { plan: null as CuttingPlan | null, isDone: false, isProvenLeast: false, evaluations: 0 }
  if (tooLarge.length === 0) state.plan = greedyCutting(task)
  const counts = new PartCounts(countedParts(parts))
  if (tooLarge.length > 0 || parts.length === 0 || counts.total > GREATEST_SETS) {
    state.isDone = true
    state.isProvenLeast = parts.length === 0
    return { step: () => ({ ...state, tooLarge }) }
  }
  const work = exactWork(task, counts, state)
  return {
    step: (evaluations) => {
      const until = state.evaluations + evaluations
      while (!state.isDone && state.evaluations < until) state.isDone = work.next().done === true
      return { ...state, tooLarge }
    },
  }
}

interface Books {
  plan: CuttingPlan | null
  isProvenLeast: boolean
  evaluations: number
}

const liesOn = (box: { widthMm: number; heightMm: number }, { lengthMm, widthMm }: StockSheet): boolean =>
  fitsIn(box, lengthMm, widthMm)

function* exactWork(task: CuttingTask, counts: PartCounts, books: Books): Generator<undefined, void> {
  const fronts: (readonly CutBox[])[] = [[]]
  for (let set = 1; set < counts.total; set += 1) {
    fronts.push(frontOf(set, fronts, counts, task, books))
    yield
  }
  const best = yield* cheapest(task, counts, fronts, books)
  books.isProvenLeast = true
  if (best === null) {
    books.plan = null
    return
  }
  books.plan = planOf(best, task, counts, fronts)
}

/** The smallest boxes that one set can be sawn from, of those that lie on some sheet. */
function frontOf(
  set: number,
  fronts: readonly (readonly CutBox[])[],
  counts: PartCounts,
  { stock, kerfMm }: CuttingTask,
  books: Books,
): readonly CutBox[] {
  const front: CutBox[] = []
  const offer = (box: CutBox): void => {
    books.evaluations += 1
    if (stock.some((sheet) => liesOn(box, sheet))) addSmallest(front, box)
  }
  const single = counts.weights.indexOf(set)
  const part = counts.parts[single]
  if (part !== undefined) partBoxes(single, part.lengthMm, part.widthMm).forEach(offer)
  for (const some of counts.subsetsOf(set)) {
    // Each pair once: which of the two comes first makes no difference to the box.
    if (some === 0 || some * 2 > set) continue
    for (const first of fronts[some] ?? [])
      for (const second of fronts[set - some] ?? []) {
        offer(beside(first, second, kerfMm))
        offer(above(first, second, kerfMm))
      }
  }
  return front
}

/** The cheapest sheets for everything: first the counted ones, each used or not, then any number of the others. */
function* cheapest(
  { stock }: CuttingTask,
  counts: PartCounts,
  fronts: readonly (readonly CutBox[])[],
  books: Books,
): Generator<undefined, Best | null> {
  const fits = stock.map((sheet) => fronts.map((front) => front.some((box) => liesOn(box, sheet))))
  const add = (from: Best | null, at: number, some: number, than: Best | null): Best | null => {
    books.evaluations += 1
    const sheet = stock[at]
    if (from === null || sheet === undefined || fits[at]?.[some] !== true) return than
    const burden = from.burden + burdenOf(sheet)
    return than !== null && than.burden <= burden ? than : { burden, stock: at, set: some, before: from }
  }
  const oneMore = (from: readonly (Best | null)[], set: number, sheets: readonly number[]): Best | null =>
    counts
      .subsetsOf(set)
      .filter((some) => some !== 0)
      .reduce<Best | null>(
        (found, some) => sheets.reduce((sofar, at) => add(from[set - some] ?? null, at, some, sofar), found),
        from[set] ?? null,
      )
  let best: (Best | null)[] = Array.from({ length: counts.total }, (_, set) =>
    set === 0 ? { burden: 0, stock: -1, set: 0, before: null } : null,
  )
  const most = counts.parts.reduce((sum, { places }) => sum + places.length, 0)
  const singles = stock.flatMap(({ count }, at) =>
    Array.from({ length: Math.min(count ?? 0, most) }, () => at),
  )
  for (const at of singles) {
    const from = best
    best = from.map((_, set) => oneMore(from, set, [at]))
    yield
  }
  const bought = stock.flatMap(({ count }, at) => (count === null ? [at] : []))
  for (let set = 1; set < counts.total; set += 1) {
    best[set] = oneMore(best, set, bought)
    yield
  }
  return best[counts.total - 1] ?? null
}

function planOf(
  best: Best,
  { stock, kerfMm }: CuttingTask,
  counts: PartCounts,
  fronts: readonly (readonly CutBox[])[],
): CuttingPlan {
  const left = counts.parts.map(({ places }) => [...places])
  const sheets: SheetUse[] = []
  for (let use: Best | null = best; use !== null && use.stock >= 0; use = use.before) {
    const sheet = stock[use.stock]
    const box = fronts[use.set]?.find((candidate) => sheet !== undefined && liesOn(candidate, sheet))
    if (sheet === undefined || box === undefined)
      throw new InvariantError('a sheet holds its set', { set: use.set })
    const diagram = cutDiagram(box, { widthMm: sheet.lengthMm, heightMm: sheet.widthMm }, kerfMm)
    const named = diagram.parts.map((placed) => ({ ...placed, part: left[placed.part]?.shift() ?? -1 }))
    sheets.push({ ...diagram, parts: named, stock: use.stock })
  }
  return cuttingPlan(sheets.toReversed(), stock)
}
