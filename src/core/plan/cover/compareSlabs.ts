import type { SlabRow } from './slabRow'

export type SlabOrder = 'answer' | 'cost' | 'resin' | 'waste' | 'weight' | 'length'
export const SLAB_ORDERS: readonly SlabOrder[] = ['answer', 'cost', 'resin', 'waste', 'weight', 'length']

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

function rank({ verdict, isReadyToPour }: SlabRow): number {
  const own = verdict.kind === 'yard' ? YARD_RANK[verdict.answer.kind] : RANK[verdict.kind]
  return isReadyToPour === false && own < 2 ? own + WET_RANK : own
}

const KEY: Readonly<Record<SlabOrder, (row: SlabRow) => number>> = {
  answer: rank,
  cost: ({ materialCents }) => last(materialCents),
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

/** The one to buy: it serves and costs least; null while none does. Rules: CHO-6. */
export function bestSlab(rows: readonly SlabRow[]): SlabRow | null {
  const [first] = compareSlabs(
    rows.filter((row) => row.slab.stock.rejected === null && rank(row) < 2),
    'answer',
  )
  return first ?? null
}
