import { formatArea, formatLength, formatPercent } from '../../units'
import { type SheetInput, sideName, sureLengthText } from './sheetInput'

type VerdictInput = Pick<SheetInput, 'verdict' | 'display' | 'text' | 'optionSure'>

/** The verdict in a sentence or two, in the maker's units. Rules: SHT-2. */
export function verdictText({ verdict, display, text, optionSure }: VerdictInput): string {
  const length = (mm: number): string => formatLength(mm, display)
  const margin = (mm: number): string => sureLengthText(mm, optionSure?.marginSdMm, display)
  const covers = (spareMm: number | null): string =>
    spareMm === null ? text.sheetVerdictCoversKept : text.sheetVerdictCovers({ spare: margin(spareMm) })
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
        depth: margin(verdict.depthMm),
        share: formatPercent(verdict.filledShare),
      })
    case 'short':
      return text.sheetVerdictShort({
        side: sideName(text, verdict.side),
        depth: margin(verdict.depthMm),
        length: length(verdict.lengthMm),
      })
    case 'off-slab':
      return text.sheetVerdictOff
  }
}
