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
  const { input, first } = ratioOf(lying.first) <= ratioOf(upright.first) ? lying : upright
  const kinds = request.kinds ?? BENCH_SHEETS
  const pages = SHEET_KINDS.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
    pagesOf(kind, input, first),
  )
  return framedSheets(pages, input)
}

function pagesOf(kind: SheetKind, input: SheetInput, first: SlabPage): readonly SheetPage[] {
  switch (kind) {
    case 'cuts':
      return [first, ...listPages(input)]
    case 'slab':
      return [slabCheckPage(input)]
    case 'table':
      return tablePages(input)
    case 'mix':
      return mixPages(input)
    case 'form':
      return formPages(input)
    case 'work':
      return workPages(input)
    case 'shopping':
      return shoppingPages(input)
    case 'quote':
      return clientQuotePages(input)
    case 'makers-quote':
      return makersQuotePages(input)
    case 'approval':
      return [approvalPage(input)]
    case 'care':
      return [carePage(input)]
  }
}

const laidOut = (input: SheetInput & { readonly orientation: Orientation }) => ({
  input,
  first: slabPage(input),
})

const ratioOf = ({ scale }: SlabPage): number => scale?.ratio ?? Infinity
