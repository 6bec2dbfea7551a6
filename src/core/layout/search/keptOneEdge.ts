import { ClearMeter } from './clearMeter'
import type { EdgeSet } from './edgeSet'
import type { KeptTable, KeptTableTask } from './keptTableTask'
import { type LargestTable, largestTableWork } from './largestTable'
import { SearchLedger, type SearchWork } from './searchState'
import type { SearchWood } from './searchWood'
import { runLengthMm, type StripRun } from './stripBox'
import type { StripPlace } from './stripScan'
import { rectanglePose } from './tablePose'
import { outlineEdges, type WidthProfile, widthProfile } from './widthProfile'

/** The work of a search for a table with one live edge; see `keptTable`. */
export function* oneEdgeWork(task: KeptTableTask, ledger: SearchLedger<KeptTable>): SearchWork {
  const edges = outlineEdges(task.wood)
  const regions = task.wood.regions.map(({ outer }) => ({ outer, holes: [] }))
  const wood: SearchWood = { ...task.wood, regions, edges }
  const teller = new OneEdge(wood)
  const own = new SearchLedger<LargestTable>()
  const { leastWidthMm: widthMm, grain, toleranceMm } = task
  const work = largestTableWork({ wood, widthMm, resinShare: 0, grain, toleranceMm }, own)
  let spent = 0
  for (let isDone = false; !isDone;) {
    isDone = work.next().done === true
    ledger.spend(own.evaluations - spent)
    spent = own.evaluations
    const found = own.incumbent
    if (found !== null && found.lengthMm >= widthMm) ledger.offer(found.lengthMm, () => teller.tell(found))
    ledger.limit(Math.max(own.bound, widthMm))
    yield
  }
}

interface OneEdgeTable {
  readonly sawnMm: number
  readonly leastWidthMm: number
  readonly meanWidthMm: number
  readonly live: 'low' | 'high'
}

/** Makes of a strip of whole wood the table whose one side runs out to the live edge. */
class OneEdge {
  readonly #wood: SearchWood
  readonly #edges: EdgeSet
  readonly #profile: WidthProfile

  constructor(wood: SearchWood) {
    this.#wood = wood
    this.#edges = wood.edges
    this.#profile = widthProfile(wood)
  }

  tell({ lengthMm, widthMm, place }: LargestTable): KeptTable {
    const run = place.run ?? { fromMm: 0, toMm: lengthMm }
    const high = this.#withLive('high', place, run, widthMm)
    const low = this.#withLive('low', place, run, widthMm)
    const { sawnMm, meanWidthMm, leastWidthMm, live } = high.meanWidthMm >= low.meanWidthMm ? high : low
    const cornerMm = live === 'high' ? sawnMm : sawnMm - meanWidthMm
    const size = { lengthMm, widthMm: meanWidthMm }
    const pose = rectanglePose(this.#wood.pivot, place.angleRad, [run.fromMm, cornerMm], size)
    const isTurned = Math.cos(pose.angleRad - place.angleRad) < 0
    const liveSides = [(live === 'high') === isTurned ? 'far' : 'near'] as const
    return { lengthMm, leastWidthMm, meanWidthMm, liveSides, pose }
  }

  /** The sawn side moved away from the live one as far as whole wood goes. */
  #withLive(live: 'low' | 'high', place: StripPlace, run: StripRun, widthMm: number): OneEdgeTable {
    const side = live === 'high' ? -1 : 1
    const places = this.#profile.edgesOver(this.#edges, place.angleRad, run)
    const stripMm = place.offsetMm + (side * widthMm) / 2
    const furthestMm = live === 'high' ? places.greatestLowMm : places.leastHighMm
    const roomMm = Math.max(0, side * (furthestMm - stripMm))
    const sawnMm = stripMm + side * (this.#isWhole(place, run, widthMm, side * roomMm) ? roomMm : 0)
    const edge = live === 'high' ? places.leastHighMm : places.greatestLowMm
    const mean = live === 'high' ? places.meanHighMm : places.meanLowMm
    return { live, sawnMm, leastWidthMm: side * (sawnMm - edge), meanWidthMm: side * (sawnMm - mean) }
  }

  /** Is the strip still whole when its one side is moved out? */
  #isWhole({ angleRad, offsetMm }: StripPlace, run: StripRun, widthMm: number, outMm: number): boolean {
    const meter = new ClearMeter(this.#wood, widthMm + Math.abs(outMm))
    const at = { angleRad, offsetMm: offsetMm + outMm / 2 }
    const wide = meter.longest(at, this.#edges, runLengthMm(run) - 0.1)
    return wide !== null && wide.fromMm <= run.fromMm + 0.1 && wide.toMm >= run.toMm - 0.1
  }
}
