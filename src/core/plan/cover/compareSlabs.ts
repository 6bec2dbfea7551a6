import type { SlabRow } from './slabRow'

export type SlabOrder = 'answer' | 'cost' | 'days' | 'resin' | 'waste' | 'weight' | 'length'
export const SLAB_ORDERS: readonly SlabOrder[] = [
  'answer',
  'cost',
  'days',
  'resin',
  'waste',
  'weight',
  'length',
]

const last = (value: number | null): number => value ?? Number.POSITIVE_INFINITY

/** Serves; serves with resin; has to be looked at; lacks something; does not serve. */
const RANK = {
  covers: 0,
  'covers-kept': 0,
  'needs-fill': 1,
  searching: 2,
  'needs-input': 3,
  'too-small': 4,
  'too-thin': 4,
} as const
const YARD_RANK = { yes: 0, measure: 2, no: 4 } as const
const WET_RANK = 0.5

/** Too wet to be poured as it is. */
export const isWet = ({ issues }: SlabRow): boolean => issues.some(({ code }) => code === 'slab-not-dry')

function rank(row: SlabRow): number {
  const { verdict } = row
  const own = verdict.kind === 'yard' ? YARD_RANK[verdict.answer.kind] : RANK[verdict.kind]
  return isWet(row) && own < 2 ? own + WET_RANK : own
}

const KEY: Readonly<Record<SlabOrder, (row: SlabRow) => number>> = {
  answer: rank,
  cost: ({ materialCents }) => last(materialCents),
  days: ({ pourHours }) => last(pourHours),
  resin: ({ resinLitres }) => last(resinLitres),
  waste: ({ wasteFraction }) => last(wasteFraction),
  weight: ({ massKg }) => last(massKg),
  length: ({ largest }) => -(largest?.lengthMm ?? 0),
}

/** Slabs by what matters today; rejected ones last; equals by their answer, then by what they cost. Rules: CHO-6. */
export function compareSlabs(rows: readonly SlabRow[], order: SlabOrder): readonly SlabRow[] {
  const out = ({ slab }: SlabRow): number => (slab.stock.rejected === null ? 0 : 1)
  const difference = (a: number, b: number): number => (a === b ? 0 : a - b)
  return rows.toSorted(
    (a, b) =>
      difference(out(a), out(b)) ||
      difference(KEY[order](a), KEY[order](b)) ||
      difference(rank(a), rank(b)) ||
      difference(last(a.materialCents), last(b.materialCents)),
  )
}

/** Does it serve, as far as is known: dry or not, with resin or without? */
export const doesServe = (row: SlabRow): boolean => row.slab.stock.rejected === null && rank(row) < 2

/** Slabs that may serve, too, and whose material costs less than the best one's, the cheapest first. */
export function cheaperSlabs(rows: readonly SlabRow[], best: SlabRow): readonly SlabRow[] {
  const isCheaper = (row: SlabRow): boolean => last(row.materialCents) < last(best.materialCents)
  const open = rows.filter((row) => row.slab.stock.rejected === null && rank(row) <= YARD_RANK.measure)
  return compareSlabs(open.filter(isCheaper), 'cost')
}

/** The one to buy: it serves and costs least; null while none does. Rules: CHO-6. */
export function bestSlab(rows: readonly SlabRow[]): SlabRow | null {
  const [first] = compareSlabs(rows.filter(doesServe), 'answer')
  return first ?? null
}
