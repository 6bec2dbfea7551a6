import { type LengthDisplay, formatAngle, formatLength, formatPlusMinus } from '../../units'
import type { Orientation, PaperName } from '../../drawing'
import type { Verdict } from '../../layout'
import type { BuildResult } from '../build/buildResult'
import type { Part } from '../part'
import type { PourResult } from '../pour/answerPour'
import type {
  MarkPosition,
  OptionAccuracy,
  OptionResult,
  PlanResult,
  SlabAccuracy,
  SlabResult,
  SlabShapeResult,
} from '../planResult'
import type { CoverageResult, FootprintResult, PiecesResult, ResinResult } from '../tableResult'
import type { Option, Plan, Slab, TableSideName } from '../schema'
import type { SheetKind } from './sheetKinds'
import type { SheetText } from '../text/en/sheet'

export interface CutSheetRequest {
  readonly plan: Plan
  readonly option: Option
  readonly slab: Slab
  readonly result: PlanResult
  readonly display: LengthDisplay
  readonly paper: PaperName
  /** Which sheets; the bench set when left out. */
  readonly kinds?: readonly SheetKind[]
  /** The day as it is to be read, e.g. `14 March 2026`: core knows no clock. */
  readonly dateText: string
  readonly text: SheetText
}

/** What the sheets draw: results that are ready, the words, and lengths in the maker's units. */
export interface SheetInput extends Omit<CutSheetRequest, 'result'> {
  readonly orientation: Orientation
  readonly shape: SlabShapeResult
  readonly marks: readonly MarkPosition[]
  /** Length of the datum between its two ends, mm; null for a slab without a photo. */
  readonly datumLengthMm: number | null
  readonly footprint: FootprintResult
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult
  readonly verdict: Verdict
  readonly resin: ResinResult | null
  /** How sure the slab's size and the table's margin and resin are; null without a photo. */
  readonly slabSure: SlabAccuracy | null
  readonly optionSure: OptionAccuracy | null
  /** Null until a worker has answered. */
  readonly pour: PourResult | null
  /** The finished top; null until a worker has answered. */
  readonly topKg: number | null
  /** Form, work and price; null until a worker has answered. */
  readonly build: BuildResult | null
  readonly length: (mm: number) => string
  readonly angle: (rad: number) => string
}

type Results = Pick<SheetInput, 'shape' | 'footprint' | 'pieces' | 'coverage' | 'verdict'>

const valueOf = <T>(part: Part<T>): T | null => (part.state === 'ready' ? part.value : null)

/** What a sheet cannot do without. */
function neededResults(slab: SlabResult, option: OptionResult): Results | null {
  const shape = valueOf(slab.shape)
  const footprint = valueOf(option.footprint)
  const pieces = valueOf(option.pieces)
  const coverage = valueOf(option.coverage)
  const verdict = valueOf(option.verdict)
  return shape && footprint && pieces && coverage && verdict
    ? { shape, footprint, pieces, coverage, verdict }
    : null
}

/** Gathers what the sheets need; null while the slab's shape, the table's place or the cuts are not worked out. */
export function gatherSheetInput(request: CutSheetRequest): Omit<SheetInput, 'orientation'> | null {
  const { result, ...rest } = request
  const slab = result.slabs.get(request.slab.id)
  const option = result.options.get(request.option.id)
  if (slab === undefined || option === undefined) return null
  const needed = neededResults(slab, option)
  if (needed === null) return null
  const scale = valueOf(slab.scale)
  return {
    ...rest,
    ...needed,
    marks: scale?.markPositions ?? [],
    datumLengthMm: scale?.datum.lengthMm ?? null,
    resin: valueOf(option.resin),
    slabSure: valueOf(slab.accuracy),
    optionSure: valueOf(option.accuracy),
    pour: valueOf(option.pour),
    build: valueOf(option.build),
    topKg: valueOf(option.build)?.weight.topKg ?? null,
    length: (mm) => unparted(formatLength(mm, request.display)),
    angle: (rad) => formatAngle(rad),
  }
}

/** A length, and how sure it is where that is known. */
export function sureLengthText(mm: number, sdMm: number | null | undefined, display: LengthDisplay): string {
  const text = formatLength(mm, display)
  const sure =
    sdMm === null || sdMm === undefined ? text : `${text} ${formatPlusMinus(sdMm, 'length', display)}`
  return unparted(sure)
}

/** A figure and its unit stay on one line. */
const unparted = (text: string): string => text.replaceAll(' ', '\u00a0')

/** A side of the table as the sheets name it. */
export function sideName(text: SheetText, side: TableSideName): string {
  const names = {
    start: text.sheetSideStart,
    end: text.sheetSideEnd,
    far: text.sheetSideFar,
    near: text.sheetSideNear,
  }
  return names[side]
}
