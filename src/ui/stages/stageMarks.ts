import type { Issue, OptionResult, Plan, PlanResult, SlabResult } from '../../core/plan'
import { STAGE_NAMES, type StageName } from './stageNames'
import { stageOfIssue } from './stageOfIssue'

/** done by the maker; worked out by the program; something must still be done; there is an answer, but it is doubted. */
export type StageMark = 'done' | 'ready' | 'needs' | 'doubtful'

export type StageMarks = Readonly<Record<StageName, StageMark>>

export interface MarkInput {
  readonly plan: Plan
  readonly result: PlanResult
  readonly slabId: string | null
  readonly optionId: string | null
}

type Facts = Readonly<Record<StageName, boolean>>

/** Whether the stage's own figure stands, whatever the doubts about it. */
function stagesThatStand(
  slab: SlabResult | undefined,
  option: OptionResult | undefined,
  hasPhoto: boolean,
): Facts {
  const isReady = (part: { readonly state: string } | undefined) => part?.state === 'ready'
  const table = isReady(option?.footprint)
  const cuts = table && isReady(option?.pieces)
  const pour = table && isPourKnown(option?.pour)
  const build = isReady(option?.buildTask)
  return {
    slabs: hasPhoto,
    photo: hasPhoto,
    scale: hasSize(slab),
    trace: isReady(slab?.shape),
    table,
    cuts,
    pour,
    form: build,
    price: build,
    paper: cuts && isReady(option?.coverage),
  }
}

/** Taped by stations, a slab has its size with its edge. */
const hasSize = (slab: SlabResult | undefined): boolean =>
  slab?.scale.state === 'ready' || slab?.shape.state === 'ready'

/** Known, on its way, or nothing to be poured. */
const isPourKnown = (pour: OptionResult['pour'] | undefined): boolean =>
  pour?.state === 'blocked'
    ? pour.because.some((id) => id.startsWith('pour-nothing-to-fill/'))
    : pour !== undefined

function hasPhotoOf(plan: Plan, slabId: string | null): boolean {
  const slab = plan.slabs.find(({ id }) => id === slabId)
  return slab !== undefined && (slab.capture.kind !== 'photo' || slab.capture.photos.length > 0)
}

const concerns = (issue: Issue, input: MarkInput): boolean => {
  const [where, id] = issue.at
  if (where === 'slabs') return id === input.slabId
  return where !== 'options' || id === input.optionId
}

/** A table that the slab does not carry is laid, but it can hardly stay so. */
function isCovered(option: OptionResult | undefined): boolean {
  if (option?.verdict.state !== 'ready') return true
  const { kind } = option.verdict.value
  return kind !== 'short' && kind !== 'off-slab'
}

/** A table that is not covered, or a pour that is still being worked out. */
const hasOpenAnswer = (stage: StageName, option: OptionResult | undefined): boolean =>
  (stage === 'table' && !isCovered(option)) || (stage === 'pour' && option?.pour.state === 'pending')

/** Stages whose answer follows from the size and from where the pieces lie. */
const HANG_ON_SIZE: ReadonlySet<StageName> = new Set(['table', 'cuts', 'pour', 'form', 'price', 'paper'])
/** The maker does nothing there: the program works it out, and nobody has looked at it yet. */
const WORKED_OUT: ReadonlySet<StageName> = new Set(['cuts', 'form', 'price', 'paper'])

/**
 * Whether covered or not is in doubt: the size of everything is, or a piece lies on other wood.
 * @param issues those of the slab and option worked on
 */
const isInDoubt = (issues: readonly Issue[]): boolean =>
  issues.some(
    ({ code, severity }) =>
      code === 'pieces-overlap' || (severity === 'warning' && stageOfIssue(code) === 'scale'),
  )

/** As `isInDoubt`, for the headline. */
export const isAnswerDoubted = (input: MarkInput): boolean =>
  isInDoubt(input.result.issues.filter((issue) => concerns(issue, input)))

/**
 * What each stage in the row is marked with.
 * A blocker at a stage means that it needs something, a warning that it is doubtful; paper is doubtful when anything is.
 */
export function stageMarks(input: MarkInput): StageMarks {
  const { plan, result, slabId, optionId } = input
  const slab = slabId === null ? undefined : result.slabs.get(slabId)
  const option = optionId === null ? undefined : result.options.get(optionId)
  const stands = stagesThatStand(slab, option, hasPhotoOf(plan, slabId))
  const issues = result.issues.filter((issue) => concerns(issue, input))
  const has = (severity: Issue['severity'], stage: StageName) =>
    issues.some((issue) => issue.severity === severity && stageOfIssue(issue.code) === stage)

  const markOf = (stage: StageName): StageMark => {
    if (!stands[stage] || has('blocker', stage)) return 'needs'
    if (has('warning', stage) || (HANG_ON_SIZE.has(stage) && isInDoubt(issues))) return 'doubtful'
    if (hasOpenAnswer(stage, option)) return 'doubtful'
    return WORKED_OUT.has(stage) ? 'ready' : 'done'
  }
  const own = STAGE_NAMES.map((stage) => [stage, markOf(stage)] as const)
  const doubtful = own.some(([, mark]) => mark === 'needs' || mark === 'doubtful')
  const paper: StageMark = stands.paper ? (doubtful ? 'doubtful' : 'ready') : 'needs'
  return { ...(Object.fromEntries(own) as Record<StageName, StageMark>), paper }
}
