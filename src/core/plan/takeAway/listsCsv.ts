import { mmToInches } from '../../units'
import { acuteAngle } from '../../cuts'
import { smallestRectangle, type Region } from '../../geometry'
import type { BuildResult } from '../build/buildResult'
import { sideName } from '../sheets/sheetInput'
import { type CsvCell, csvText } from './csvText'
import type { TakeAwayInput } from './planDrawing'

const rounded = (value: number, decimals: number): number => {
  const factor = 10 ** decimals
  return Math.round(value * factor) / factor || 0
}

interface InUnits {
  readonly name: (what: string) => string
  readonly figure: (mm: number) => number
}

/** Lengths in mm to the hundredth, or in decimal inches to the ten-thousandth. */
const unitsOf = ({ display }: TakeAwayInput): InUnits =>
  display.system === 'mm'
    ? { name: (what) => `${what}_mm`, figure: (mm) => rounded(mm, 2) }
    : { name: (what) => `${what}_in`, figure: (mm) => rounded(mmToInches(mm), 4) }

/**
 * The cuts in order of work, a row each.
 * @returns CSV; stations and lengths in the maker's units, named in the head
 * Rules: TAK-3.
 */
export function cutsCsv(input: TakeAwayInput): string {
  const { pieces, text } = input
  const { name, figure } = unitsOf(input)
  const ends = ['first_end', 'second_end'].flatMap((end) => [
    name(`${end}_along`),
    name(`${end}_right_of_datum`),
  ])
  const head = [
    'cut',
    'side',
    ...ends,
    name('length'),
    'angle_to_datum_deg',
    'waste_side',
    name('kerf'),
    'falls_off',
  ]
  const rows = pieces.cuts.map((cut): readonly CsvCell[] => [
    cut.number,
    cut.side === null ? text.sheetListOwnCut : sideName(text, cut.side),
    ...[cut.from, cut.to].flatMap(({ alongMm, offsetMm }) => [figure(alongMm), figure(offsetMm)]),
    figure(cut.lengthMm),
    rounded((acuteAngle(cut.angleToDatumRad) * 180) / Math.PI, 2),
    cut.wasteSide,
    figure(cut.kerfMm),
    cut.yields.join('; '),
  ])
  return csvText(head, rows)
}

/** Length and width of the smallest box round a piece, however it is turned. */
function extent({ outer }: Region, figure: InUnits['figure']): readonly number[] {
  const { lengthMm, widthMm } = smallestRectangle(outer)
  return [figure(lengthMm), figure(widthMm)]
}

/**
 * Wood and form parts, a row each.
 * @param build null: form parts are not worked out, and left out
 * Rules: TAK-3.
 */
export function partsCsv(input: TakeAwayInput, build: BuildResult | null): string {
  const { pieces, slab } = input
  const { name, figure } = unitsOf(input)
  const head = ['part', 'use', 'count', name('length'), name('width'), name('thickness'), 'area_m2']
  const wood = pieces.pieces.map((piece): readonly CsvCell[] => [
    piece.name,
    piece.use,
    1,
    ...extent(piece.region, figure),
    slab.thicknessMm === null ? null : figure(slab.thicknessMm),
    rounded(piece.areaMm2 / 1e6, 4),
  ])
  const form = (build?.form?.parts ?? []).map((part): readonly CsvCell[] => [
    part.name,
    `form ${part.kind}`,
    1,
    figure(part.lengthMm),
    figure(part.widthMm),
    figure(input.option.resin.form.baseThicknessMm),
    rounded((part.lengthMm * part.widthMm) / 1e6, 4),
  ])
  return csvText(head, [...wood, ...form])
}
