import type { Issue, OptionResult, Plan, PlanResult, SlabResult } from '../../core/plan'
import { STAGE_NAMES, type StageName } from './stageNames'
import { stageOfIssue } from './stageOfIssue'

/** done; something must still be done; done, but the program doubts it. */
export type StageMark = 'done' | 'needs' | 'doubtful'

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
  return {
    photo: hasPhoto,
    scale: isReady(slab?.scale),
    trace: isReady(slab?.shape),
    table,
    cuts,
    pour,
    paper: cuts && isReady(option?.coverage),
  }
}

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
    if (stage === 'table' && !isCovered(option)) return 'doubtful'
    if (stage === 'pour' && option?.pour.state === 'pending') return 'doubtful'
    return has('warning', stage) ? 'doubtful' : 'done'
  }
  const own = STAGE_NAMES.map((stage) => [stage, markOf(stage)] as const)
  const doubtful = own.some(([, mark]) => mark !== 'done')
  const paper: StageMark = stands.paper ? (doubtful ? 'doubtful' : 'done') : 'needs'
  return { ...(Object.fromEntries(own) as Record<StageName, StageMark>), paper }
}
