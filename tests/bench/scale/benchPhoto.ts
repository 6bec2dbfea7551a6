import { benchReferences, type RefinedReference } from './benchReference'
import { type Figures, figuresOf, holdsTruth } from './figures'
import { readBenchPhoto } from './photoTruth'
import { type Condition, type Estimate, prepareBench, refinedClicks, runTrial } from './scaleTrials'

export const CONDITIONS: readonly Condition[] = [true, false].flatMap((line): Condition[] => {
  const suffix = line ? 'line' : 'no line'
  const read = (name: string, bowMm: number, twistMm: number): Condition => ({
    name: `${name}, ${suffix}`,
    line,
    bent: { bowMm, twistMm },
    flatnessRead: true,
  })
  return [
    read('flat', 0, 0),
    read('bow 10', 10, 0),
    read('bow 20', 20, 0),
    read('twist 10', 0, 10),
    read('twist 20', 0, 20),
    { name: `unread, drawn, ${suffix}`, line, bent: 'drawn', flatnessRead: false },
    { name: `unread, flat, ${suffix}`, line, bent: { bowMm: 0, twistMm: 0 }, flatnessRead: false },
  ]
})

/** One photo's line of the bench. */
export interface PhotoLine {
  readonly photo: string
  readonly references: readonly string[]
  readonly unknownReferences: readonly string[]
  /** True for a photo with four marks or a board: the accuracy targets are meant for it. */
  readonly full: boolean
  readonly refinement: {
    /** Share of thumb clicks of which the program was sure. */
    readonly surePercent: number
    readonly medianErrorPx: number
    readonly p95ErrorPx: number
  }
  readonly conditions: Readonly<Record<string, Figures>>
  /** The 30 lengths of the first trial under each condition. */
  readonly firstTrial: Readonly<Record<string, readonly LengthRow[]>>
  /** The same 30 over all trials. */
  readonly allTrials: Readonly<Record<string, readonly LengthOverTrials[]>>
}

interface LengthRow {
  readonly truthMm: number
  readonly estimateMm: number
  readonly sdMm: number
}

interface LengthOverTrials {
  readonly truthMm: number
  readonly meanEstimateMm: number
  readonly rmsErrorMm: number
  readonly rmsSdMm: number
  /** Trials whose 95 % interval holds the truth. */
  readonly holds: number
}

/**
 * All trials of one photo.
 * @param seed everything that is drawn follows from it
 */
export function benchPhoto(folder: string, file: string, trials: number, seed: number): PhotoLine {
  const photo = readBenchPhoto(folder, file)
  const { known, unknown } = benchReferences(photo.truth)
  const bench = prepareBench(photo, known, seed)
  const clicks = Array.from({ length: trials }, (_, n) => refinedClicks(bench, seed + 7919 * (n + 1)))
  const conditions: Record<string, Figures> = {}
  const firstTrial: Record<string, readonly LengthRow[]> = {}
  const allTrials: Record<string, readonly LengthOverTrials[]> = {}
  CONDITIONS.forEach((condition, c) => {
    const results = clicks.map((refined, n) =>
      runTrial(bench, refined, condition, seed + 104_729 * (c + 1) + n),
    )
    conditions[condition.name] = rounded(figuresOf(results))
    const done = results.flatMap((result) => (result ? [result.lengths] : []))
    firstTrial[condition.name] = (done[0] ?? []).map(rowOf)
    allTrials[condition.name] = (done[0] ?? []).map((_, i) =>
      overTrials(done.flatMap((lengths) => lengths[i] ?? [])),
    )
  })
  return {
    photo: photo.name,
    references: known.map((r) => r.kind),
    unknownReferences: unknown,
    full: known.some((r) => r.board !== null || r.placesMm.length >= 4),
    refinement: refinementOf(
      known.map((r) => r.truePx),
      clicks,
    ),
    conditions,
    firstTrial,
    allTrials,
  }
}

function refinementOf(
  truePx: readonly (readonly (readonly [number, number])[])[],
  clicks: readonly (readonly RefinedReference[])[],
): PhotoLine['refinement'] {
  const all = clicks.flatMap((references) =>
    references.flatMap((reference, r) =>
      reference.clicks.map((click, i) => {
        const [x, y] = truePx[r]?.[i] ?? [0, 0]
        return { sure: click.sure, errorPx: Math.hypot(click.px[0] - x, click.px[1] - y) }
      }),
    ),
  )
  const errors = all
    .filter((c) => c.sure)
    .map((c) => c.errorPx)
    .sort((a, b) => a - b)
  const at = (share: number): number => errors[Math.floor(share * (errors.length - 1))] ?? Number.NaN
  return {
    surePercent: digits((100 * errors.length) / all.length),
    medianErrorPx: digits(at(0.5)),
    p95ErrorPx: digits(at(0.95)),
  }
}

const digits = (value: number): number => Number(value.toPrecision(4))

const rowOf = ({ truth, estimate, sd }: Estimate): LengthRow => ({
  truthMm: Number(truth.toFixed(3)),
  estimateMm: Number(estimate.toFixed(3)),
  sdMm: Number(sd.toFixed(4)),
})

function overTrials(of: readonly Estimate[]): LengthOverTrials {
  const mean = (value: (e: Estimate) => number): number =>
    of.reduce((sum, e) => sum + value(e), 0) / of.length
  return {
    truthMm: Number(mean(({ truth }) => truth).toFixed(3)),
    meanEstimateMm: Number(mean(({ estimate }) => estimate).toFixed(3)),
    rmsErrorMm: Number(Math.sqrt(mean(({ truth, estimate }) => (estimate - truth) ** 2)).toFixed(4)),
    rmsSdMm: Number(Math.sqrt(mean(({ sd }) => sd ** 2)).toFixed(4)),
    holds: of.filter(holdsTruth).length,
  }
}

const rounded = (figures: Figures): Figures =>
  Object.fromEntries(
    Object.entries(figures).map(([key, value]) => [key, typeof value === 'number' ? digits(value) : value]),
  ) as unknown as Figures
