import { type Verdict, verdictOf } from '../layout'
import { optionAccuracy } from './accuracy/optionAccuracy'
import { type Issue, issueOf } from './issue'
import { optionCoverage } from './optionCoverage'
import { optionFootprint } from './optionFootprint'
import { optionPieces } from './optionPieces'
import { optionResin } from './optionResin'
import { builtOption } from './build/optionBuild'
import { leaningGaps } from './pour/leaningGaps'
import { optionPour, withPour } from './pour/optionPour'
import { NO_ANSWERS, type SlowAnswers } from './pour/slowAnswers'
import { after, blockedBy, type Found, type Part, ready } from './part'
import type { OptionAccuracy, OptionResult, PlanResult, SlabResult, SlabShapeResult } from './planResult'
import type { CoverageResult, FootprintResult } from './tableResult'
import { rememberRecent } from './rememberRecent'
import type { Option, Plan, Slab } from './schema'
import { type Figures, slabFigures, slabThickness } from './slabFigures'
import { thicknessIssues } from './thicknessIssues'

/** Results kept per part: more than the options of a long job, few enough to forget what was dragged past. */
const OPTIONS_KEPT = 32

/**
 * Every result of a plan; the only way to a figure.
 * @param plan schema-valid; any such plan computes without throwing
 * @param answers what slow parts are known to come to; what is not known is pending. A draft leaves out how sure each
 *   option's figures are: 600 draws take longer than a frame.
 * @returns parts that are ready, blocked by named issues, or pending; the same plan gives a deep-equal result
 * Rules: PLN-1, PLN-2, PLN-3.
 */
export function computePlan(plan: Plan, answers: SlowAnswers = NO_ANSWERS): PlanResult {
  const slabs = plan.slabs.map((slab) => slabFigures({ slab }))
  const options = plan.options.map((option) => {
    const index = plan.slabs.findIndex(({ id }) => id === option.footprint?.slabId)
    const figures = optionFigures({
      option,
      slab: plan.slabs[index] ?? null,
      slabResult: slabs[index]?.result ?? null,
      isDraft: answers.isDraft,
    })
    const task = figures.result.pourTask
    const poured = pouredFigures({
      figures,
      answer: task.state === 'ready' ? answers.pour(task.value) : null,
    })
    const slab = plan.slabs[index]
    const slabResult = slabs[index]?.result
    if (slab === undefined || slabResult === undefined) return poured
    return builtOption({ option, slab, slabResult, shop: plan.shop, figures: poured }, answers.build)
  })
  return {
    slabs: new Map(slabs.map(({ result }) => [result.slabId, result])),
    options: new Map(options.map(({ result }) => [result.optionId, result])),
    issues: [...slabs, ...options].flatMap(({ issues }) => issues),
  }
}

interface OptionInput {
  readonly option: Option
  readonly slab: Slab | null
  readonly slabResult: SlabResult | null
  readonly isDraft: boolean
}

const footprintFigures = rememberRecent(optionFootprint, OPTIONS_KEPT)
const piecesFigures = rememberRecent(optionPieces, OPTIONS_KEPT)
const coverageFigures = rememberRecent(optionCoverage, OPTIONS_KEPT)
const leaningFigures = rememberRecent(leaningGaps, OPTIONS_KEPT)
const resinFigures = rememberRecent(optionResin, OPTIONS_KEPT)
const pourFigures = rememberRecent(optionPour, OPTIONS_KEPT)
const verdictFigures = rememberRecent(verdictPart, OPTIONS_KEPT)
const optionAccuracyFigures = rememberRecent(optionAccuracy, OPTIONS_KEPT)
const optionFigures = rememberRecent(optionFiguresOf, OPTIONS_KEPT)
const pouredFigures = rememberRecent(withPour, OPTIONS_KEPT)

function verdictPart({
  coverage,
  sides,
}: {
  readonly coverage: CoverageResult
  readonly sides: Option['table']['sides']
}): Found<Verdict> {
  return ready(verdictOf(coverage, sides))
}

function optionFiguresOf({ option, slab, slabResult, isDraft }: OptionInput): Figures<OptionResult> {
  const laid = option.footprint
  if (laid === null || slab === null || slabResult === null) {
    const code = laid === null ? 'table-not-laid' : 'table-on-missing-slab'
    return blockedOption(option.id, blockedBy([issueOf(code, 'blocker', ['options', option.id])]))
  }
  const footprint = after(slabResult.shape, (shape) =>
    footprintFigures({ optionId: option.id, table: option.table, footprint: laid, shape }),
  )
  if (footprint.part.state !== 'ready' || slabResult.shape.state !== 'ready') {
    return blockedOption(option.id, footprint)
  }
  return laidOption({ option, slab, slabResult, isDraft }, laid, {
    footprint: footprint.part.value,
    footprintIssues: footprint.issues,
    shape: slabResult.shape.value,
  })
}

interface LaidTable {
  readonly footprint: FootprintResult
  readonly footprintIssues: readonly Issue[]
  readonly shape: SlabShapeResult
}

function laidOption(
  {
    option,
    slab,
    slabResult,
    isDraft,
  }: OptionInput & { readonly slab: Slab; readonly slabResult: SlabResult },
  { pose }: NonNullable<Option['footprint']>,
  { footprint, footprintIssues, shape }: LaidTable,
): Figures<OptionResult> {
  const { sides } = option.table
  const common = { optionId: option.id, sides, placements: option.placements, footprint, pose, shape }
  const pieces = piecesFigures({
    ...common,
    cuts: option.cuts,
    pieces: option.pieces,
    marks: slabResult.scale.state === 'ready' ? slabResult.scale.value.markPositions : NO_MARKS,
  })
  const coverage = after(pieces.part, (value) => coverageFigures({ ...common, pieces: value }))
  const cast = after(coverage.part, (value) =>
    after(slabThickness(slab).part, (slabThicknessMm) =>
      ready({
        optionId: option.id,
        resin: option.resin,
        tableThicknessMm: option.table.thicknessMm,
        slabThicknessMm,
        sides,
        footprint,
        coverage: value,
        leaning: leaningFigures({ slab, option, pose, shape, coverage: value, slabThicknessMm }),
      }),
    ),
  )
  const resin = after(cast.part, resinFigures)
  const { moistureFraction } = slab
  const pour = after(cast.part, (value) => pourFigures({ ...value, moistureFraction }))
  const verdict = after(coverage.part, (value) => verdictFigures({ coverage: value, sides }))
  const accuracy: Found<OptionAccuracy | null> = isDraft
    ? { part: { state: 'pending' }, issues: [] }
    : optionAccuracyPart(option, slabResult, pose, footprint, {
        pieces: pieces.part,
        coverage: coverage.part,
        verdict: verdict.part,
        resin: resin.part,
      })
  return {
    result: {
      optionId: option.id,
      footprint: { state: 'ready', value: footprint },
      pieces: pieces.part,
      coverage: coverage.part,
      verdict: verdict.part,
      resin: resin.part,
      accuracy: accuracy.part,
      pourTask: pour.part,
      pour: pour.part.state === 'ready' ? { state: 'pending' } : pour.part,
      buildTask: { state: 'pending' },
      build: { state: 'pending' },
    },
    issues: [
      ...footprintIssues,
      ...thicknessIssues(option, slab),
      ...pieces.issues,
      ...coverage.issues,
      ...resin.issues,
      ...pour.issues,
    ],
  }
}

/** Resin that is not known yet keeps the rest from being sure of itself. */
function optionAccuracyPart(
  { placements, table: { sides } }: Option,
  { scale, accuracy }: SlabResult,
  pose: NonNullable<Option['footprint']>['pose'],
  footprint: FootprintResult,
  parts: Pick<OptionResult, 'pieces' | 'coverage' | 'verdict' | 'resin'>,
): Found<OptionAccuracy | null> {
  if (accuracy.state !== 'ready') return { part: accuracy, issues: [] }
  const slab = accuracy.value
  if (slab === null || scale.state !== 'ready') return ready(null)
  const resin = parts.resin.state === 'ready' ? parts.resin.value : null
  const common = { scale: scale.value.scale, slab, pose, footprint, sides, resin, placements }
  return after(parts.pieces, (pieces) =>
    after(parts.coverage, (coverage) =>
      after(parts.verdict, (verdict) => optionAccuracyFigures({ ...common, pieces, coverage, verdict })),
    ),
  )
}

const NO_MARKS: readonly never[] = []

function blockedOption(optionId: string, { part, issues }: Found<unknown>): Figures<OptionResult> {
  const blocked: Part<never> = part.state === 'blocked' ? part : { state: 'pending' }
  return {
    result: {
      optionId,
      footprint: blocked,
      pieces: blocked,
      coverage: blocked,
      verdict: blocked,
      resin: blocked,
      accuracy: blocked,
      pourTask: blocked,
      pour: blocked,
      buildTask: blocked,
      build: blocked,
    },
    issues,
  }
}
