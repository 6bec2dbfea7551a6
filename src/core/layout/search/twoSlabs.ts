import type { Isometry } from '../../geometry'
import { InvariantError } from '../../units'
import type { GrainLimit } from './angleRange'
import { type LargestTable, largestTableWork } from './largestTable'
import { type Search, SearchLedger, searchOf, type SearchWork } from './searchState'
import type { SearchWood } from './searchWood'

export interface SlabCandidate {
  readonly id: string
  readonly wood: SearchWood
  readonly grain: GrainLimit | null
}

export interface TwoSlabTask {
  readonly slabs: readonly SlabCandidate[]
  readonly lengthMm: number
  readonly widthMm: number
  /** Width lost where two slabs are ripped and joined, mm. */
  readonly jointMm: number
  /** Widest band of resin between the two that the maker accepts, mm; 0: wood to wood. */
  readonly mostBandMm: number
  readonly toleranceMm: number
}

/** The widest strip of whole wood of the table's length in one slab. */
export interface SlabStrip {
  readonly id: string
  readonly widthMm: number
  /** No strip of this length is wider, mm. */
  readonly boundMm: number
  /** Pose of the strip's frame: x along the table's length, y across from 0 to widthMm. */
  readonly pose: Isometry
}

export interface TwoSlabPair {
  readonly first: SlabStrip
  readonly second: SlabStrip
  /** rip: the two strips meet; band: resin between them makes up what is missing. */
  readonly join: 'rip' | 'band'
  readonly bandMm: number
  /** Width that both strips have beyond the table, mm; 0 with a band. */
  readonly spareMm: number
}

/**
 * Two slabs for one table, joined along its length.
 * @returns a search whose incumbent lists the pairs that serve, the best first: wood to wood with the least to spare, then
 *   the narrowest band; its value is the number of slabs done
 * @throws InvariantError when a size is not positive
 *
 * Method: the widest whole strip of the table's length in each slab (the longest-run search with length and width
 * exchanged), then every pair. The two inner edges are straight; a live edge towards the band is not weighed.
 * Rules: LAY-20.
 */
export function twoSlabs(task: TwoSlabTask): Search<readonly TwoSlabPair[]> {
  if (!(task.lengthMm > 0) || !(task.widthMm > 0)) {
    throw new InvariantError('a table needs a size', { lengthMm: task.lengthMm, widthMm: task.widthMm })
  }
  return searchOf((ledger) => twoSlabsWork(task, ledger))
}

function* twoSlabsWork(task: TwoSlabTask, ledger: SearchLedger<readonly TwoSlabPair[]>): SearchWork {
  const strips: SlabStrip[] = []
  ledger.limit(task.slabs.length)
  for (const [done, slab] of task.slabs.entries()) {
    const own = new SearchLedger<LargestTable>()
    const work = largestTableWork(
      {
        wood: slab.wood,
        widthMm: task.lengthMm,
        resinShare: 0,
        grain: across(slab.grain),
        toleranceMm: task.toleranceMm,
      },
      own,
    )
    let spent = 0
    for (let isDone = false; !isDone;) {
      isDone = work.next().done === true
      ledger.spend(own.evaluations - spent)
      spent = own.evaluations
      yield
    }
    if (own.incumbent !== null) strips.push(stripOf(slab.id, own.incumbent, own.bound))
    ledger.offer(done + 1, () => pairsOf(strips, task))
  }
}

/** The searched run lies across the table. */
const across = (grain: GrainLimit | null): GrainLimit | null =>
  grain === null ? null : { ...grain, directionRad: grain.directionRad + Math.PI / 2 }

/** The searched run is the strip's width: its frame is turned by a quarter turn about its corner. */
function stripOf(
  id: string,
  { lengthMm: widthMm, widthMm: lengthMm, pose }: LargestTable,
  boundMm: number,
): SlabStrip {
  const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
  const turned = {
    xMm: pose.xMm - lengthMm * sin,
    yMm: pose.yMm + lengthMm * cos,
    angleRad: pose.angleRad - Math.PI / 2,
    turnedOver: false,
  }
  return { id, widthMm, boundMm, pose: turned }
}

function pairsOf(strips: readonly SlabStrip[], task: TwoSlabTask): readonly TwoSlabPair[] {
  const pairs = strips.flatMap((first, i) =>
    strips.slice(i + 1).flatMap((second) => pairOf(first, second, task)),
  )
  return pairs.sort((p, q) => p.bandMm - q.bandMm || p.spareMm - q.spareMm)
}

function pairOf(first: SlabStrip, second: SlabStrip, task: TwoSlabTask): readonly TwoSlabPair[] {
  const missingMm = task.widthMm + task.jointMm - first.widthMm - second.widthMm
  if (missingMm <= 0) return [{ first, second, join: 'rip', bandMm: 0, spareMm: -missingMm }]
  const bandMm = missingMm - task.jointMm
  if (bandMm > task.mostBandMm) return []
  return [{ first, second, join: 'band', bandMm: Math.max(0, bandMm), spareMm: 0 }]
}
