import type { Orientation, Sheet } from '../../drawing'
import { listPages } from './listPages'
import { mixPages } from './mixPages'
import { framedSheets } from './sheetFrame'
import { type CutSheetRequest, gatherSheetInput, type SheetInput } from './sheetInput'
import { type SlabPage, slabPage } from './slabPage'
import { tablePages } from './tablePages'

/**
 * The sheets that go to the saw: the slab with its cuts, the cut list, the table with its resin, the mix card.
 * All sheets of a job lie the same way, so that one page size serves the whole print; the slab's drawing says which.
 * @returns none while the slab's shape, the table's place or its cuts are not worked out: the plan's issues say why
 * Rules: SHT-1 to SHT-9.
 */
export function buildCutSheets(request: CutSheetRequest): readonly Sheet[] {
  const gathered = gatherSheetInput(request)
  if (gathered === null) return []
  const upright = laidOut({ ...gathered, orientation: 'portrait' })
  const lying = laidOut({ ...gathered, orientation: 'landscape' })
  const { input, first } = ratioOf(lying.first) <= ratioOf(upright.first) ? lying : upright
  return framedSheets([first, ...listPages(input), ...tablePages(input), ...mixPages(input)], input)
}

const laidOut = (input: SheetInput & { readonly orientation: Orientation }) => ({
  input,
  first: slabPage(input),
})

const ratioOf = ({ scale }: SlabPage): number => scale?.ratio ?? Infinity
