import { formatArea, formatLength, formatPercent, type LengthDisplay } from '../../units'
import type { Verdict } from '../../layout'
import type { SheetText } from '../text/en/sheet'
import { sideName } from './sheetInput'

/** The verdict in a sentence or two, in the maker's units. Rules: SHT-2. */
export function verdictText(verdict: Verdict, display: LengthDisplay, text: SheetText): string {
  const length = (mm: number): string => formatLength(mm, display)
  const covers = (spareMm: number | null): string =>
    spareMm === null ? text.sheetVerdictCoversKept : text.sheetVerdictCovers({ spare: length(spareMm) })
  switch (verdict.kind) {
    case 'covers':
      return covers(verdict.spareMm)
    case 'covers-with-voids': {
      const voids = { voids: String(verdict.voids), area: formatArea(verdict.voidAreaMm2, display) }
      return `${covers(verdict.spareMm)} ${text.sheetVerdictVoids(voids)}`
    }
    case 'needs-fill':
      return text.sheetVerdictFill({
        side: sideName(text, verdict.worstSide),
        depth: length(verdict.depthMm),
        share: formatPercent(verdict.filledShare),
      })
    case 'short':
      return text.sheetVerdictShort({
        side: sideName(text, verdict.side),
        depth: length(verdict.depthMm),
        length: length(verdict.lengthMm),
      })
    case 'off-slab':
      return text.sheetVerdictOff
  }
}
