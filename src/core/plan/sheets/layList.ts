import { type Block, paragraph } from '../../drawing'
import type { TablePoint } from '../../geometry'
import { formatArea } from '../../units'
import { laidEdge } from './laidEdge'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

/** Names of the two ends of a laid piece's sawn edge: `A–1` and `A–2` of offcut A. */
export const laidEndNames = (pieceName: string): readonly [string, string] => [
  `${pieceName}–1`,
  `${pieceName}–2`,
]

/** Where each offcut is laid in the form, to be set out by tape. Rules: SHT-10. */
export function layBlocks(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, coverage } = input
  const lines = [...placeLines(input), ...overlapLines(input)]
  if (coverage.placed.length === 0 || lines.length === 0) return []
  const say = (words: string): Block => paragraph(words, { sizeMm: SIZE.body, widthMm, spaceBeforeMm: 1.8 })
  return [
    paragraph(text.sheetLayHeading, { sizeMm: SIZE.heading, weight: 'bold', widthMm, spaceBeforeMm: 5 }),
    say(text.sheetLayHow),
    ...lines.map(say),
  ]
}

function placeLines({ coverage, footprint, option, text, length }: SheetInput): readonly string[] {
  const place = ([x, y]: TablePoint): string => text.sheetLayPlace({ along: length(x), across: length(y) })
  return coverage.placed.flatMap((laid) => {
    const edge = laidEdge(laid, footprint.blank)
    if (edge === null) return []
    const name = text.sheetPiece({ name: laid.name })
    const isTurned = option.placements.find(({ id }) => id === laid.placementId)?.pose.turnedOver === true
    const [fromName, toName] = laidEndNames(laid.name)
    return [
      text.sheetLayPiece({
        piece: isTurned ? text.sheetLayTurned({ piece: name }) : name,
        fromName,
        from: place(edge.from),
        toName,
        to: place(edge.to),
      }),
    ]
  })
}

const overlapLines = ({ coverage, text, display }: SheetInput): readonly string[] =>
  coverage.overlaps.map(({ name, areaMm2 }) =>
    text.sheetLayOverlap({ piece: text.sheetPiece({ name }), area: formatArea(areaMm2, display) }),
  )
