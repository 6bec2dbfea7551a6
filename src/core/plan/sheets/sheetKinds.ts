/** The sheets of the bench set, in the order in which they are printed. */
export const SHEET_KINDS = [
  'cuts',
  'slab',
  'table',
  'mix',
  'form',
  'work',
  'shopping',
  'quote',
  'makers-quote',
  'approval',
  'care',
] as const

export type SheetKind = (typeof SHEET_KINDS)[number]

/** What goes to the bench; the client's own sheets are printed when they are asked for. */
export const BENCH_SHEETS: readonly SheetKind[] = ['cuts', 'slab', 'table', 'mix']
