import type { Region, Ring, SlabPoint, TablePoint } from '../../geometry'
import { assertNever, ok, problem, type Result } from '../../units'
import type { GrainLimit } from './angleRange'
import { type BestPose, bestPose } from './bestPose'
import { fitSearch } from './doesItFit'
import { frontier, type FrontierPoint, spanningWidths } from './frontier'
import type { Growth } from './growingShape'
import { keptTable } from './keptTable'
import type { KeptTable } from './keptTableTask'
import { type LargestShape, largestShape } from './largestShape'
import { type LargestTable, largestTable } from './largestTable'
import type { PoseWishes } from './poseWishes'
import type { Search } from './searchState'
import { searchWood, type SearchWood } from './searchWood'
import { type SlabCandidate, twoSlabs, type TwoSlabPair } from './twoSlabs'

/** Clean wood in the slab frame, mm: outer rings positive, voids as negative holes, nothing crossing. */
export type WoodRegions = readonly Region<SlabPoint>[]

/** What can be asked about wood and a table; plain data, so that it can be sent to a worker. */
export type CoverTask =
  /** Where a table of this size lies best. */
  | {
      readonly kind: 'bestPose'
      readonly regions: WoodRegions
      readonly lengthMm: number
      readonly widthMm: number
      readonly wishes: PoseWishes
    }
  /** Whether a table of this size lies wholly on wood (or with resin up to a share). */
  | {
      readonly kind: 'fit'
      readonly regions: WoodRegions
      readonly lengthMm: number
      readonly widthMm: number
      readonly resinShare: number
      readonly grain: GrainLimit | null
    }
  /** The longest table of this width. */
  | {
      readonly kind: 'largestTable'
      readonly regions: WoodRegions
      readonly widthMm: number
      readonly resinShare: number
      readonly grain: GrainLimit | null
    }
  /** The longest table for each width; widthsMm null: sixteen widths up to the largest square's side. */
  | {
      readonly kind: 'frontier'
      readonly regions: WoodRegions
      readonly widthsMm: readonly number[] | null
      readonly resinShare: number
      readonly grain: GrainLimit | null
    }
  /** The largest similar outline (factor), or how much there is to spare round a convex one (margin). */
  | {
      readonly kind: 'largestShape'
      readonly regions: WoodRegions
      readonly outline: Ring<TablePoint>
      readonly growth: Growth
      readonly grain: GrainLimit | null
    }
  /** The longest table that keeps one or both live edges. */
  | {
      readonly kind: 'keptTable'
      readonly regions: WoodRegions
      readonly keep: 'both' | 'one'
      readonly leastWidthMm: number
      readonly grain: GrainLimit | null
    }
  /** Pairs of slabs that make one table. */
  | {
      readonly kind: 'twoSlabs'
      readonly slabs: readonly {
        readonly id: string
        readonly regions: WoodRegions
        readonly grain: GrainLimit | null
      }[]
      readonly lengthMm: number
      readonly widthMm: number
      readonly jointMm: number
      readonly mostBandMm: number
    }

export type CoverKind = CoverTask['kind']

/** What each kind of task finds. */
export interface CoverFindings {
  readonly bestPose: BestPose
  readonly fit: LargestTable
  readonly largestTable: LargestTable
  readonly frontier: readonly FrontierPoint[]
  readonly largestShape: LargestShape
  readonly keptTable: KeptTable
  readonly twoSlabs: readonly TwoSlabPair[]
}

export type CoverFinding = CoverFindings[CoverKind]

/** How closely each answer is proved. */
export const COVER_TOLERANCES = {
  /** Share of the table's area. */
  bestPoseShare: 0.002,
  lengthMm: 2,
  frontierMm: 5,
  shapeFactor: 0.001,
  marginMm: 1,
  keptMm: 5,
} as const

/** Evaluations after which a proof is given up; the answer then says what is left open. */
const MOST_EVALUATIONS = { frontierWidth: 15_000, any: 600_000 } as const

/**
 * The search for a task.
 * @returns 'cover-no-wood', 'cover-table-no-size', 'cover-share-out-of-range', 'cover-outline-not-convex' or
 *   'cover-outline-hidden' when there is nothing to search
 * Rules: LAY-21.
 */
export function coverSearch(task: CoverTask): Result<Search<CoverFinding>> {
  const wrong = problemOf(task)
  if (wrong !== null) return wrong
  if (task.kind === 'twoSlabs') return twoSlabSearch(task)
  const wood = searchWood(task.regions)
  if (!wood.ok) return wood
  const search = woodSearch(task, wood.value)
  return search.ok ? ok(limited(search.value)) : search
}

function woodSearch(
  task: Exclude<CoverTask, { kind: 'twoSlabs' }>,
  wood: SearchWood,
): Result<Search<CoverFinding>> {
  switch (task.kind) {
    case 'bestPose':
      return ok(bestPose({ ...task, wood, toleranceShare: COVER_TOLERANCES.bestPoseShare }))
    case 'fit':
      return ok(fitSearch({ ...task, wood }))
    case 'largestTable':
      return ok(largestTable({ ...task, wood, toleranceMm: COVER_TOLERANCES.lengthMm }))
    case 'frontier':
      return frontierSearch(task, wood)
    case 'largestShape': {
      const tolerance = task.growth === 'factor' ? COVER_TOLERANCES.shapeFactor : COVER_TOLERANCES.marginMm
      return largestShape({ ...task, wood, tolerance })
    }
    case 'keptTable':
      return ok(keptTable({ ...task, wood, toleranceMm: COVER_TOLERANCES.keptMm }))
    default:
      return assertNever(task)
  }
}

function frontierSearch(
  task: Extract<CoverTask, { kind: 'frontier' }>,
  wood: SearchWood,
): Result<Search<CoverFinding>> {
  const widthsMm = task.widthsMm ?? spanningWidths(wood, task.grain)
  if (widthsMm === null || widthsMm.length === 0) return problem('cover-no-wood')
  return ok(
    frontier({
      ...task,
      wood,
      widthsMm,
      toleranceMm: COVER_TOLERANCES.frontierMm,
      mostEvaluations: MOST_EVALUATIONS.frontierWidth,
    }),
  )
}

function twoSlabSearch(task: Extract<CoverTask, { kind: 'twoSlabs' }>): Result<Search<CoverFinding>> {
  // A slab without wood makes no pair; the others still do.
  const slabs = task.slabs.flatMap(({ id, regions, grain }): readonly SlabCandidate[] => {
    const wood = searchWood(regions)
    return wood.ok ? [{ id, wood: wood.value, grain }] : []
  })
  if (slabs.length === 0) return problem('cover-no-wood')
  return ok(twoSlabs({ ...task, slabs, toleranceMm: COVER_TOLERANCES.lengthMm }))
}

/** Ends a search that resists proof; what it has found and proved by then stands. */
function limited<T>(search: Search<T>): Search<T> {
  return {
    step: (evaluations) => {
      const state = search.step(evaluations)
      return state.evaluations >= MOST_EVALUATIONS.any ? { ...state, isDone: true } : state
    },
  }
}

function problemOf(task: CoverTask) {
  if (sizesOf(task).some((sizeMm) => !(sizeMm > 0) || !Number.isFinite(sizeMm)))
    return problem('cover-table-no-size')
  if ('resinShare' in task && !(task.resinShare >= 0 && task.resinShare < 1))
    return problem('cover-share-out-of-range')
  return null
}

function sizesOf(task: CoverTask): readonly number[] {
  switch (task.kind) {
    case 'bestPose':
    case 'fit':
    case 'twoSlabs':
      return [task.lengthMm, task.widthMm]
    case 'largestTable':
      return [task.widthMm]
    case 'keptTable':
      return [task.leastWidthMm]
    case 'frontier':
      return task.widthsMm ?? []
    case 'largestShape':
      return []
    default:
      return assertNever(task)
  }
}

/** How far a search has come, from 0 to 1, for a progress bar: what is found beside what could still be. */
export const coverProgress = ({
  value,
  bound,
}: {
  readonly value: number
  readonly bound: number
}): number => (value > 0 && Number.isFinite(bound) ? Math.min(1, value / bound) : 0)
