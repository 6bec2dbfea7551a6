import type { Orientation, Sheet } from '../../drawing'
import { approvalPage, carePage } from './clientPages'
import { formPages } from './formPages'
import { listPages } from './listPages'
import { mixPages } from './mixPages'
import { framedSheets, type SheetPage } from './sheetFrame'
import { type CutSheetRequest, gatherSheetInput, type SheetInput } from './sheetInput'
import { BENCH_SHEETS, SHEET_KINDS, type SheetKind } from './sheetKinds'
import { clientQuotePages, makersQuotePages } from './quotePages'
import { slabCheckPage } from './slabCheckPage'
import { type SlabPage, slabPage } from './slabPage'
import { tablePages } from './tablePages'
import { shoppingPages, workPages } from './workPages'

/** Sheets of words alone: where nothing is drawn beside them, they lie upright, as letters do. */
const LETTERS: ReadonlySet<SheetKind> = new Set(['work', 'shopping', 'quote', 'makers-quote', 'care'])

/**
 * The sheets of a job: the slab with its cuts and the cut list, the slab by stations, the table with its resin, the mix
 * card, and the client's sheets, as far as they are asked for.
 * All sheets of a job lie the same way, so that one page size serves the whole print; the slab's drawing says which.
 * @returns none while the slab's shape, the table's place or its cuts are not worked out: the plan's issues say why
 * Rules: SHT-1 to SHT-13.
 */
export function buildCutSheets(request: CutSheetRequest): readonly Sheet[] {
  const gathered = gatherSheetInput(request)
  if (gathered === null) return []
  const upright = laidOut({ ...gathered, orientation: 'portrait' })
  const lying = laidOut({ ...gathered, orientation: 'landscape' })
  const kinds = request.kinds ?? BENCH_SHEETS
  const isLetter = kinds.every((kind) => LETTERS.has(kind))
  const { input, first } = !isLetter && ratioOf(lying.first) <= ratioOf(upright.first) ? lying : upright
  const pages = SHEET_KINDS.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
    PAGES_OF[kind](input, first),
  )
  return framedSheets(pages, input)
}

type PagesOf = (input: SheetInput, first: SlabPage) => readonly SheetPage[]

const PAGES_OF: Readonly<Record<SheetKind, PagesOf>> = {
  cuts: (input, first) => [first, ...listPages(input)],
  slab: (input) => [slabCheckPage(input)],
  table: tablePages,
  mix: mixPages,
  form: formPages,
  work: workPages,
  shopping: shoppingPages,
  quote: clientQuotePages,
  'makers-quote': makersQuotePages,
  approval: (input) => [approvalPage(input)],
  care: (input) => [carePage(input)],
}

const laidOut = (input: SheetInput & { readonly orientation: Orientation }) => ({
  input,
  first: slabPage(input),
})

const ratioOf = ({ scale }: SlabPage): number => scale?.ratio ?? Infinity
