import { ringMoments, type Isometry, tablePoint } from '../../geometry'
import {
  type BestPose,
  finishedRing,
  type LargestShape,
  type LargestTable,
  type KeptTable,
} from '../../layout'
import { boardMeasure, densityKgPerM3, gravityAt, speciesNamed } from '../../wood'
import { computePlan } from '../computePlan'
import type { Issue } from '../issue'
import type { OptionResult, SlabResult } from '../planResult'
import type { PourTask } from '../pour/pourTask'
import type { Option, Plan, Slab } from '../schema'
import { isConvexOutline, keptSides, sizeOf } from './coverTasks'
import { dryingOf, drynessIssues, poseBeforeDrying } from './drying'
import { finishedThickness, type FinishedThickness } from './finishedThickness'
import { yardAnswer, type YardAnswer } from './yardAnswer'

/** What the searches have found for one slab so far; null: not yet, or nothing. */
export interface SlabFindings {
  readonly margin: LargestShape | null
  readonly bestPose: BestPose | null
  readonly largest: LargestTable | null
  readonly kept: KeptTable | null
  readonly isDone: boolean
}

export type SlabVerdict =
  | {
      readonly kind: 'covers'
      readonly marginMm: number
      /** Where least is to spare; null: not known, or at a void. */
      readonly tightest: 'corner' | 'side' | null
      readonly sdMm: number | null
      readonly voids: number
    }
  | { readonly kind: 'covers-kept'; readonly leastWidthMm: number; readonly meanWidthMm: number }
  | {
      readonly kind: 'needs-fill'
      readonly shortMm: number
      readonly sdMm: number | null
      readonly share: number
    }
  | { readonly kind: 'too-small'; readonly shortMm: number | null; readonly share: number | null }
  | { readonly kind: 'too-thin'; readonly finished: FinishedThickness }
  | { readonly kind: 'yard'; readonly answer: YardAnswer }
  | { readonly kind: 'searching' }
  | { readonly kind: 'needs-input'; readonly issues: readonly Issue[] }

export interface SlabRow {
  readonly slab: Slab
  readonly verdict: SlabVerdict
  /** Where the table lies best on the slab as it is; null while that is not known. */
  readonly pose: Isometry | null
  readonly largest: { readonly lengthMm: number; readonly widthMm: number } | null
  readonly resinLitres: number | null
  readonly wasteFraction: number | null
  readonly volumeMm3: number | null
  readonly massKg: number | null
  readonly materialCents: number | null
  readonly finished: FinishedThickness | null
  /** Whether it is too wet, as an issue. */
  readonly issues: readonly Issue[]
  /** What a worker is asked for the pour of a table laid there; null: nothing to pour, or not known. */
  readonly pourTask: PourTask | null
  /** From the first pour until the cast may be flattened; 0: nothing to pour; null: not known yet. */
  readonly pourHours: number | null
}

/** The same job with nothing but its table, laid on this slab: pieces and lines of its own were another slab's. */
function trialPlan(plan: Plan, option: Option, slab: Slab, pose: Isometry): Plan {
  const trial: Option = {
    ...option,
    footprint: { slabId: slab.id, pose },
    cuts: option.cuts.filter(({ kind }) => kind === 'footprint'),
    pieces: [],
    placements: [],
  }
  return { ...plan, slabs: [slab], options: [trial] }
}

function poseOf({ option, slab }: RowInput, { margin, bestPose, kept }: SlabFindings): Isometry | null {
  const found = kept?.pose ?? (covers(option, margin) ? margin?.pose : bestPose?.pose) ?? null
  if (found === null) return null
  const middle = ringMoments(finishedRing(option.table.outline)).centroid
  return poseBeforeDrying(found, dryingOf(slab).lossFraction, tablePoint(middle[0], middle[1]))
}

/** What is to spare, mm: of an outline that bends inwards, half of what it may grow in width. */
function marginMm(option: Option, margin: LargestShape | null): number | null {
  if (margin === null) return null
  const { outline } = option.table
  const isMargin = outline.kind !== 'free' || isConvexOutline(outline.ring)
  return isMargin ? margin.growth : ((margin.growth - 1) * sizeOf(outline).widthMm) / 2
}

const covers = (option: Option, margin: LargestShape | null): boolean => (marginMm(option, margin) ?? -1) >= 0

export interface RowInput {
  readonly plan: Plan
  readonly option: Option
  readonly slab: Slab
  readonly slabResult: SlabResult
  readonly issues: readonly Issue[]
  readonly findings: SlabFindings
}

/** Everything about one candidate: the searches' answer first, the figures of a table laid there after it. Rules: CHO-3, CHO-5. */
export function slabRow(input: RowInput): SlabRow {
  const { plan, option, slab, findings } = input
  const pose = input.slabResult.shape.state === 'ready' ? poseOf(input, findings) : null
  const trial =
    pose === null ? null : (computePlan(trialPlan(plan, option, slab, pose)).options.get(option.id) ?? null)
  const finished = finishedThickness(slab, option.cover)
  const volumeMm3 = volumeOf(input)
  return {
    slab,
    verdict: verdictOfSlab(input, trial, finished),
    pose,
    largest: largestOf(input),
    ...trialFigures(slab, trial),
    volumeMm3,
    massKg: volumeMm3 === null ? null : massOf(slab, volumeMm3),
    finished,
    issues: drynessIssues(slab, option.room.greatestPourMoisture),
    ...pourOf(trial),
  }
}

/** A top without gaps needs no pour; how long another one takes, a worker has to say. */
function pourOf(trial: OptionResult | null): Pick<SlabRow, 'pourTask' | 'pourHours'> {
  const gaps = trial?.coverage.state === 'ready' ? trial.coverage.value.gaps : null
  if (gaps?.length === 0) return { pourTask: null, pourHours: 0 }
  return { pourTask: trial?.pourTask.state === 'ready' ? trial.pourTask.value : null, pourHours: null }
}

/** What the table takes when it is laid on the slab; by tape only the slab itself has a price. */
function trialFigures(
  { priceCents }: Slab,
  trial: OptionResult | null,
): Pick<SlabRow, 'resinLitres' | 'wasteFraction' | 'materialCents'> {
  const resin = trial?.resin.state === 'ready' ? trial.resin.value : null
  return {
    resinLitres: resin === null ? null : resin.mixLitres,
    wasteFraction: trial?.coverage.state === 'ready' ? trial.coverage.value.leftOverFraction : null,
    materialCents: priceCents === null ? null : priceCents + (resin?.costCents ?? 0),
  }
}

function largestOf({ option, slab, findings }: RowInput): SlabRow['largest'] {
  const { widthMm } = sizeOf(option.table.outline)
  if (findings.kept !== null) return { lengthMm: findings.kept.lengthMm, widthMm: findings.kept.leastWidthMm }
  if (findings.largest !== null) return { lengthMm: findings.largest.lengthMm, widthMm }
  const { lengthMm, narrowestMm } = slab.stock.tape
  return lengthMm !== null && narrowestMm !== null && narrowestMm >= widthMm ? { lengthMm, widthMm } : null
}

function verdictOfSlab(
  input: RowInput,
  trial: OptionResult | null,
  finished: FinishedThickness | null,
): SlabVerdict {
  const { option, slabResult, slab } = input
  if (finished !== null && finished.thicknessMm < option.table.thicknessMm)
    return { kind: 'too-thin', finished }
  if (slabResult.shape.state === 'ready') return searchedVerdict(input, trial)
  const answer = yardAnswer(slab.stock.tape, sizeOf(option.table.outline))
  if (answer !== null) return { kind: 'yard', answer }
  const issues = input.issues.filter(({ severity, at }) => severity === 'blocker' && at[1] === slab.id)
  return { kind: 'needs-input', issues }
}

function searchedVerdict(input: RowInput, trial: OptionResult | null): SlabVerdict {
  const { option, slab, findings } = input
  if (keptSides(option) !== null) return keptVerdict(input)
  const sdMm = marginSd(slab, sizeOf(option.table.outline).widthMm, trial)
  const spareMm = marginMm(option, findings.margin)
  if (spareMm !== null && spareMm >= 0)
    return {
      kind: 'covers',
      marginMm: spareMm,
      tightest: tightestOf(trial, spareMm),
      sdMm,
      voids: voidsIn(trial),
    }
  if (!findings.isDone) return { kind: 'searching' }
  return shortVerdict(input, spareMm === null ? null : -spareMm, sdMm)
}

function keptVerdict({ option, findings: { kept, isDone } }: RowInput): SlabVerdict {
  const { lengthMm } = sizeOf(option.table.outline)
  if (kept !== null && kept.lengthMm >= lengthMm)
    return { kind: 'covers-kept', leastWidthMm: kept.leastWidthMm, meanWidthMm: kept.meanWidthMm }
  if (!isDone) return { kind: 'searching' }
  return { kind: 'too-small', shortMm: kept === null ? null : lengthMm - kept.lengthMm, share: null }
}

/** Resin may make up what is missing where a side is filled, up to the share that the maker accepts. */
function shortVerdict(
  { option, findings }: RowInput,
  shortMm: number | null,
  sdMm: number | null,
): SlabVerdict {
  if (findings.bestPose === null) return { kind: 'too-small', shortMm, share: null }
  const share = 1 - findings.bestPose.woodShare
  const isFilled = Object.values(option.table.sides).some(({ finish }) => finish === 'filled')
  if (!isFilled || share > option.cover.mostResinShare) return { kind: 'too-small', shortMm, share }
  return { kind: 'needs-fill', shortMm: shortMm ?? 0, sdMm, share }
}

/** Further off the search's margin than this, what stops the table is no edge: it is a void, mm. */
const SAME_MARGIN_MM = 3

function tightestOf(trial: OptionResult | null, marginMm: number): 'corner' | 'side' | null {
  const spare = trial?.coverage.state === 'ready' ? trial.coverage.value.spare : null
  if (spare === null || Math.abs(spare.distanceMm - marginMm) > SAME_MARGIN_MM) return null
  return spare.isAtCorner ? 'corner' : 'side'
}

const voidsIn = (trial: OptionResult | null): number =>
  trial?.coverage.state === 'ready'
    ? trial.coverage.value.gaps.filter(({ kind }) => kind === 'void').length
    : 0

/** Of the photo at the tightest place, and of what the wood may yet lose over half the table's width. */
function marginSd(slab: Slab, widthMm: number, trial: OptionResult | null): number | null {
  const photo = trial?.accuracy.state === 'ready' ? (trial.accuracy.value?.marginSdMm ?? null) : null
  const drying = (dryingOf(slab).sdFraction * widthMm) / 2
  return photo === null ? null : Math.hypot(photo, drying)
}

/** Gross: what is paid for. By tape: the mean of least and greatest width. */
function volumeOf({ slab, slabResult }: RowInput): number | null {
  const { thicknessMm, stock } = slab
  if (thicknessMm === null) return null
  if (slabResult.shape.state === 'ready') return slabResult.shape.value.grossAreaMm2 * thicknessMm
  const { lengthMm, narrowestMm, widestMm } = stock.tape
  const widths = [narrowestMm, widestMm].flatMap((width) => width ?? [])
  if (lengthMm === null || widths.length === 0) return null
  const meanWidthMm = widths.reduce((sum, width) => sum + width, 0) / widths.length
  const size = { lengthMm, meanWidthMm, widestMm: Math.max(...widths), thicknessMm }
  return boardMeasure(size, 'mean-width', 'exact').volumeMm3
}

/** As dry as most slabs in a yard are sold, until it is measured. Common practice, no source. */
const USUAL_MOISTURE = 0.12

function massOf({ species, moistureFraction }: Slab, volumeMm3: number): number | null {
  const wood = species === null ? null : speciesNamed(species)
  if (wood === null) return null
  const moisture = moistureFraction ?? USUAL_MOISTURE
  return (densityKgPerM3(gravityAt(wood, moisture), moisture) * volumeMm3) / 1e9
}
