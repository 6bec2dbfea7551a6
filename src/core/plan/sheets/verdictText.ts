import { formatArea, formatLength, formatPercent } from '../../units'
import { verdictSentence } from '../verdictSentence'
import { type SheetInput, sideName, sureLengthText } from './sheetInput'

type VerdictInput = Pick<SheetInput, 'verdict' | 'display' | 'text' | 'optionSure'>

/** The verdict in a sentence or two, in the maker's units. Rules: SHT-2. */
export const verdictText = ({ verdict, display, text, optionSure }: VerdictInput): string =>
  verdictSentence(
    verdict,
    {
      covers: text.sheetVerdictCovers,
      coversKept: () => text.sheetVerdictCoversKept,
      voidsInside: ({ voids, area }) => ` ${text.sheetVerdictVoids({ voids: String(voids), area })}`,
      needsFill: text.sheetVerdictFill,
      short: text.sheetVerdictShort,
      offSlab: () => text.sheetVerdictOff,
    },
    {
      length: (mm) => formatLength(mm, display),
      margin: (mm) => sureLengthText(mm, optionSure?.marginSdMm, display),
      area: (mm2) => formatArea(mm2, display),
      share: (fraction) => formatPercent(fraction),
      side: (side) => sideName(text, side),
    },
  )
