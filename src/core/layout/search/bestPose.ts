import type { Isometry } from '../../geometry'
import { InvariantError } from '../../units'
import { allowedAngles, HALF_TURN, partMiddles } from './angleRange'
import { areaInBox } from './areaKernel'
import { BoundHeap } from './boundHeap'
import { climbPose } from './climbPose'
import { edgesOf } from './edgeSet'
import { type BoxBlur, type PoseBox, poseHalves, worthBlur, worthBound } from './poseBox'
import { bestApart, type ScannedPose, scannedPose, scanTerms } from './poseScan'
import type { PoseWishes } from './poseWishes'
import { type MiddlePose, worthAt, type WorthGradient, type WorthTerm, worthTerms } from './poseWorth'
import { type Search, searchOf, type SearchLedger, type SearchWork } from './searchState'
import type { SearchWood } from './searchWood'
import { rectanglePose } from './tablePose'
import { turnedExtent } from './turnedExtent'

export interface BestPoseTask {
  readonly wood: SearchWood
  readonly lengthMm: number
  readonly widthMm: number
  readonly wishes: PoseWishes
  /** The search ends when nothing can be better by more than this share of the table's area; 0.002 is proved quickly. */
  readonly toleranceShare: number
}

export interface BestPose {
  /** Pose of the table frame in the slab frame. */
  readonly pose: Isometry
  /** What is maximised: wood in the table, with what the wishes add or take off. */
  readonly worthMm2: number
  /** Wood in the table, voids counted as gaps. */
  readonly woodMm2: number
  readonly woodShare: number
  /** Area of each wished zone that lies in the table, in the order of the wishes. */
  readonly zonesMm2: readonly number[]
}

const SCAN_STEP_RAD = (2 * Math.PI) / 180
/** Best places of the scan from which a climb is begun. */
const CLIMBS = 12
/** Directions that the proof begins with differ by less than this. */
const PROOF_STEP_RAD = (4 * Math.PI) / 180

/**
 * The pose of a table of given size that is worth most.
 * @throws InvariantError when a size or the tolerance is not positive
 *
 * Method: a coverage raster for each direction (25 mm, 2°) finds where to climb on the exact worth; best-first branch and
 * bound then proves it. The middles looked at are those over the wood's bounds in each direction. Nothing is random.
 * Rules: LAY-12.
 */
export function bestPose(task: BestPoseTask): Search<BestPose> {
  const { lengthMm, widthMm, toleranceShare } = task
  if (!(lengthMm > 0) || !(widthMm > 0) || !(toleranceShare > 0)) {
    throw new InvariantError('a table needs a size and a tolerance', { lengthMm, widthMm, toleranceShare })
  }
  return searchOf((ledger) => bestPoseWork(new PoseSearch(task, ledger)))
}

function* bestPoseWork(search: PoseSearch): SearchWork {
  yield* search.scan()
  yield* search.prove()
}

interface BlurredBox extends PoseBox {
  readonly blur: BoxBlur
}

class PoseSearch {
  readonly #task: BestPoseTask
  readonly #ledger: SearchLedger<BestPose>
  readonly #terms: readonly WorthTerm[]

  constructor(task: BestPoseTask, ledger: SearchLedger<BestPose>) {
    this.#task = task
    this.#ledger = ledger
    this.#terms = worthTerms(task.wood, task.lengthMm, task.widthMm, task.wishes)
  }

  get #toleranceMm2(): number {
    return this.#task.toleranceShare * this.#task.lengthMm * this.#task.widthMm
  }

  get #angles() {
    return allowedAngles(this.#task.wishes.grain, HALF_TURN)
  }

  *scan(): SearchWork {
    const zones = scanTerms(this.#terms, this.#task.wood)
    const parts = Math.max(1, Math.ceil((this.#angles.toRad - this.#angles.fromRad) / SCAN_STEP_RAD))
    const places: ScannedPose[] = []
    for (const angleRad of partMiddles(this.#angles, parts)) {
      places.push(scannedPose(zones, this.#task.wood, angleRad))
      this.#ledger.spend(this.#terms.length)
      yield
    }
    const best = bestApart(places, CLIMBS)
    for (const { pose } of best) {
      this.#climb(pose)
      yield
    }
  }

  #climb(from: MiddlePose): void {
    const armMm = Math.hypot(this.#task.lengthMm, this.#task.widthMm) / 3
    const { pose, worth } = climbPose(from, armMm, (at) => this.#worthAt(at))
    this.#offer(
      this.#withinAngles(pose) ? pose : from,
      this.#withinAngles(pose) ? worth : this.#worthAt(from),
    )
  }

  #withinAngles({ angleRad }: MiddlePose): boolean {
    const { fromRad, toRad } = this.#angles
    return toRad - fromRad >= Math.PI || (angleRad >= fromRad && angleRad <= toRad)
  }

  #worthAt(pose: MiddlePose): WorthGradient {
    this.#ledger.spend(this.#terms.length)
    return worthAt(this.#terms, pose)
  }

  /** Best-first branch and bound over all poses. */
  *prove(): SearchWork {
    const heap = new BoundHeap<BlurredBox>()
    for (const box of this.#roots()) this.#judge(box, heap)
    while (heap.bound > this.#ledger.value + this.#toleranceMm2) {
      const box = heap.pop()
      if (box === undefined) break
      for (const half of poseHalves(box, box.blur)) this.#judge(half, heap)
      this.#ledger.limit(heap.bound)
      yield
    }
    this.#ledger.limit(heap.bound)
  }

  #roots(): readonly PoseBox[] {
    const span = this.#angles.toRad - this.#angles.fromRad
    const parts = Math.max(1, Math.ceil(span / PROOF_STEP_RAD))
    return partMiddles(this.#angles, parts).map((angleRad) => {
      const { minU, maxU, minV, maxV } = turnedExtent(this.#task.wood.edges, angleRad)
      const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
      const [u, v] = [(minU + maxU) / 2, (minV + maxV) / 2]
      return {
        xMm: u * cos - v * sin,
        yMm: u * sin + v * cos,
        angleRad,
        frameRad: angleRad,
        halfAlongMm: (maxU - minU) / 2,
        halfAcrossMm: (maxV - minV) / 2,
        halfAngleRad: span / parts / 2,
        bound: Infinity,
      }
    })
  }

  #judge(box: PoseBox, heap: BoundHeap<BlurredBox>): void {
    this.#ledger.spend(3 * this.#terms.length)
    const bound = worthBound(this.#terms, box)
    if (bound <= this.#ledger.value) return
    const middle = this.#worthAt(box)
    heap.push({ ...box, bound, blur: worthBlur(box, this.#task, middle) })
    if (middle.worthMm2 > this.#ledger.value) this.#climb(box)
  }

  #offer(at: MiddlePose, { worthMm2 }: WorthGradient): void {
    this.#ledger.offer(worthMm2, () => this.#told(at, worthMm2))
  }

  #told(at: MiddlePose, worthMm2: number): BestPose {
    const { wood, lengthMm, widthMm, wishes } = this.#task
    const box = { ...at, halfLengthMm: lengthMm / 2, halfWidthMm: widthMm / 2 }
    const woodMm2 = areaInBox(wood.edges, box)
    const [cos, sin] = [Math.cos(at.angleRad), Math.sin(at.angleRad)]
    const corner = [
      at.xMm * cos + at.yMm * sin - lengthMm / 2,
      at.yMm * cos - at.xMm * sin - widthMm / 2,
    ] as const
    return {
      pose: rectanglePose(wood.pivot, at.angleRad, corner, { lengthMm, widthMm }),
      worthMm2,
      woodMm2,
      woodShare: woodMm2 / (lengthMm * widthMm),
      zonesMm2: wishes.zones.map(({ regions }) => areaInBox(edgesOf(regions, wood.pivot), box)),
    }
  }
}
