import { pointDistanceMm } from '../../geometry'
import { type Block, listItem, paragraph } from '../../drawing'
import type { MarkPosition } from '../planResult'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

/** A datum end this near to a mark is at the mark, mm: the datum is taken from marks exactly or set by eye. */
const AT_MARK_MM = 0.5
const INDENT_MM = 6

/** How the datum is found on the slab and used: steps in order. Rules: SHT-5. */
export function datumBlocks(input: SheetInput, widthMm: number): readonly Block[] {
  const { text, length, shape } = input
  const steps = [
    ...findDatum(input),
    text.sheetDatumSlab({ length: length(shape.lengthMm), width: length(shape.widthMm) }),
    text.sheetDatumSquare,
    text.sheetDatumCheck,
  ]
  return [
    paragraph(text.sheetDatumHeading, { sizeMm: SIZE.heading, weight: 'bold', widthMm }),
    ...steps.map((step, k) =>
      listItem(String(k + 1), step, { sizeMm: SIZE.body, widthMm, indentMm: INDENT_MM, spaceBeforeMm: 2 }),
    ),
  ]
}

function findDatum({ datumLengthMm, marks, text, length }: SheetInput): readonly string[] {
  if (datumLengthMm === null) return [text.sheetDatumStations]
  const from = markAt(marks, 0)
  const to = markAt(marks, datumLengthMm)
  if (from !== null && to !== null) {
    return [
      text.sheetDatumMarks({ from, to }),
      text.sheetDatumLength({ from, to, length: length(datumLengthMm) }),
    ]
  }
  const taped = (alongMm: number): string =>
    marks
      .map(({ name, at }) => ({ name, distanceMm: pointDistanceMm(at, [alongMm, 0]) }))
      .toSorted((a, b) => a.distanceMm - b.distanceMm)
      .slice(0, 2)
      .map(({ name, distanceMm }) => text.sheetDatumTape({ mark: name, distance: length(distanceMm) }))
      .join(', ')
  return [
    text.sheetDatumTaped({ start: taped(0), end: taped(datumLengthMm) }),
    text.sheetDatumLength({
      from: text.sheetZero,
      to: text.sheetOtherEnd,
      length: length(datumLengthMm),
    }),
  ]
}

const markAt = (marks: readonly MarkPosition[], alongMm: number): string | null =>
  marks.find(({ at }) => pointDistanceMm(at, [alongMm, 0]) <= AT_MARK_MM)?.name ?? null
