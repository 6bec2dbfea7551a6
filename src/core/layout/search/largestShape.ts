import {
  applyIsometry,
  type Isometry,
  type Point,
  type Ring,
  slabPoint,
  type TablePoint,
} from '../../geometry'
import { InvariantError, ok, type Result } from '../../units'
import {
  allowedAngles,
  type AngleRange,
  FULL_TURN,
  type GrainLimit,
  HALF_TURN,
  partMiddles,
} from './angleRange'
import { BoundHeap } from './boundHeap'
import { ConvexMeter } from './convexMeter'
import type { EdgeSet } from './edgeSet'
import { convexShape, type Growth, type GrowthMeter, type ShapeBox, type ShapeFacts } from './growingShape'
import { type BoxBlur, poseHalves } from './poseBox'
import type { MiddlePose } from './poseWorth'
import { type Search, searchOf, type SearchLedger, type SearchWork } from './searchState'
import { isInWood, type SearchWood } from './searchWood'
import { StarMeter, starShape } from './starMeter'
import { turnedExtent } from './turnedExtent'

export interface LargestShapeTask {
  readonly wood: SearchWood
  /** The outline as it would be, mm in the table frame, positive. */
  readonly outline: Ring<TablePoint>
  /** factor: a similar shape; margin: the same shape with an even margin on every side (convex outlines only). */
  readonly growth: Growth
  readonly grain: GrainLimit | null
  /** The search ends when nothing can grow further than the answer by more than this: a factor, or mm of margin. */
  readonly tolerance: number
  /** When set, the search ends as soon as it is known whether the shape can grow to this. */
  readonly goal?: number
}

export interface LargestShape {
  /** How far the shape may grow: its factor, or its margin in mm (below 0: by so much it does not fit). */
  readonly growth: number
  /** Pose in the slab frame of the outline times the factor, or of the outline as given when it grows by a margin. */
  readonly pose: Isometry
}

/**
 * The largest place for a growing shape.
 * @returns 'cover-table-no-size'; 'cover-outline-not-convex' for a margin round an outline with inward corners;
 *   'cover-outline-hidden' when no place sees all of it
 * @throws InvariantError when the tolerance is not positive
 *
 * Method: how far the shape may grow at a pose is exact (`ConvexMeter`, `StarMeter`); a coarse grid, a climb from its best
 * places, then best-first branch and bound over middle and direction. Nothing is random. Rules: LAY-17, LAY-18.
 */
export function largestShape(task: LargestShapeTask): Result<Search<LargestShape>> {
  if (!(task.tolerance > 0))
    throw new InvariantError('a search needs a tolerance', { tolerance: task.tolerance })
  const found = meterOf(task)
  if (!found.ok) return found
  return ok(searchOf((ledger) => new ShapeSearch(task, found.value, ledger).work()))
}

interface MeasuredShape {
  readonly facts: ShapeFacts
  readonly meter: GrowthMeter
}

function meterOf({ wood, outline, growth }: LargestShapeTask): Result<MeasuredShape> {
  const convex = convexShape(outline, growth)
  if (convex.ok) return ok({ facts: convex.value, meter: new ConvexMeter(convex.value, wood.edges.count) })
  if (growth === 'margin') return convex
  const star = starShape(outline)
  if (!star.ok) return star
  return ok({ facts: star.value, meter: new StarMeter(star.value, wood.edges.count) })
}

/** A pose with its growth, as the search handles it. */
interface GrownPose {
  readonly growth: number
  readonly middle: MiddlePose
}

/** Directions that the search begins with differ by less than this. */
const FIRST_STEP_RAD = (8 * Math.PI) / 180

/** Middles looked at in each of these directions first. */
const GRID_ALONG = 12
const GRID_ACROSS = 7
const CLIMBS = 3

interface BlurredBox extends ShapeBox {
  readonly blur: BoxBlur
}

class ShapeSearch {
  readonly #task: LargestShapeTask
  readonly #ledger: SearchLedger<LargestShape>
  readonly #meter: GrowthMeter
  readonly #facts: ShapeFacts

  constructor(task: LargestShapeTask, { facts, meter }: MeasuredShape, ledger: SearchLedger<LargestShape>) {
    this.#task = task
    this.#ledger = ledger
    this.#meter = meter
    this.#facts = facts
  }

  *work(): SearchWork {
    const heap = new BoundHeap<BlurredBox>()
    yield* this.#scan()
    for (const box of this.#roots()) this.#judge(box, heap)
    while (!this.#isSettled(heap.bound)) {
      const box = heap.pop()
      if (box === undefined) break
      const edges = this.#meter.reachable(box)
      for (const half of poseHalves(box, box.blur)) this.#judge({ ...half, edges }, heap)
      this.#ledger.limit(heap.bound)
      yield
    }
    this.#ledger.limit(heap.bound)
  }

  #isSettled(bound: number): boolean {
    const { goal, tolerance } = this.#task
    const { value } = this.#ledger
    if (goal !== undefined && (value >= goal || bound < goal)) return true
    return bound <= value + tolerance
  }

  /** A coarse grid over all middles and directions; a climb from the best places. */
  *#scan(): SearchWork {
    const found: GrownPose[] = []
    for (const root of this.#roots()) {
      const best = this.#bestOnGrid(root, found[0]?.growth ?? -Infinity)
      if (best !== null) found.unshift(best)
      yield
    }
    for (const { middle } of found.slice(0, CLIMBS)) {
      this.#try(middle, this.#task.wood.edges)
      yield
    }
  }

  #bestOnGrid(root: ShapeBox, floor: number): GrownPose | null {
    let best: GrownPose | null = null
    const [cos, sin] = [Math.cos(root.angleRad), Math.sin(root.angleRad)]
    for (let i = 0; i < GRID_ALONG * GRID_ACROSS; i += 1) {
      const u = ((2 * ((i % GRID_ALONG) + 0.5)) / GRID_ALONG - 1) * root.halfAlongMm
      const v = ((2 * (Math.floor(i / GRID_ALONG) + 0.5)) / GRID_ACROSS - 1) * root.halfAcrossMm
      const middle = {
        xMm: root.xMm + u * cos - v * sin,
        yMm: root.yMm + u * sin + v * cos,
        angleRad: root.angleRad,
      }
      const growth = this.#valueAt(middle, this.#task.wood.edges, best?.growth ?? floor)
      if (growth > (best?.growth ?? floor)) best = { growth, middle }
    }
    return best
  }

  get #angles(): AngleRange {
    const { symmetry } = this.#facts
    if (symmetry === 'any-turn') return { fromRad: -1e-9, toRad: 1e-9 }
    return allowedAngles(this.#task.grain, symmetry === 'half-turn' ? HALF_TURN : FULL_TURN)
  }

  #roots(): readonly ShapeBox[] {
    const { edges } = this.#task.wood
    const span = this.#angles.toRad - this.#angles.fromRad
    const parts = Math.max(1, Math.ceil(span / FIRST_STEP_RAD))
    return partMiddles(this.#angles, parts).map((angleRad) => {
      const { minU, maxU, minV, maxV } = turnedExtent(edges, angleRad)
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
        edges,
      }
    })
  }

  #judge(box: ShapeBox, heap: BoundHeap<BlurredBox>): void {
    this.#ledger.spend()
    const bound = Math.min(box.bound, this.#bound(box))
    if (bound <= this.#ledger.value) return
    heap.push({ ...box, bound, blur: this.#meter.blurOf(box) })
    this.#try(box, box.edges)
  }

  #bound(box: ShapeBox): number {
    const reach = this.#meter.bound(box, this.#ledger.value)
    if (this.#isIn(box)) return reach
    return Math.min(reach, this.#meter.boundOutside(box))
  }

  #isIn({ xMm, yMm }: MiddlePose): boolean {
    return isInWood(this.#task.wood.edges, xMm, yMm)
  }

  /** How far the shape may grow at a pose; anything up to the floor is of no interest. */
  #valueAt(pose: MiddlePose, edges: EdgeSet, floor: number): number {
    this.#ledger.spend()
    const growth = this.#meter.valueAt(edges, pose, floor)
    return growth > floor && this.#isIn(pose) ? growth : -Infinity
  }

  #try(pose: MiddlePose, edges: EdgeSet): void {
    const growth = this.#valueAt(pose, edges, this.#ledger.value)
    if (growth <= this.#ledger.value) return
    const isWorthAClimb = growth > this.#ledger.value + this.#task.tolerance / 2
    const climbed = isWorthAClimb ? this.#climb(pose, growth) : { growth, middle: pick(pose) }
    this.#ledger.offer(climbed.growth, () => this.#told(climbed))
  }

  /** Compass search over the three steps, in lengths at the shape's rim. */
  #climb(from: MiddlePose, growth: number): GrownPose {
    let best: GrownPose = { growth, middle: pick(from) }
    const armMm = this.#facts.lengthMm / 2
    for (let stepMm = 16; stepMm > 1e-3;) {
      const next = this.#better(best, stepMm, armMm)
      if (next === null) stepMm /= 2
      else best = next
    }
    return best
  }

  #told({ growth, middle }: GrownPose): LargestShape {
    const { wood, growth: kind } = this.#task
    const factor = kind === 'factor' ? growth : 1
    const own: Point = [factor * this.#facts.middle[0], factor * this.#facts.middle[1]]
    const angleRad = this.#angleOf(middle)
    const turn: Isometry = { xMm: 0, yMm: 0, angleRad, turnedOver: false }
    const [x, y] = applyIsometry(turn, own, slabPoint)
    const pose = { ...turn, xMm: wood.pivot[0] + middle.xMm - x, yMm: wood.pivot[1] + middle.yMm - y }
    return { growth, pose }
  }

  #angleOf({ angleRad }: MiddlePose): number {
    if (this.#facts.symmetry === 'any-turn') return 0
    return this.#facts.symmetry === 'none' ? angleRad : upright(angleRad)
  }

  #better(from: GrownPose, stepMm: number, armMm: number): GrownPose | null {
    let best: GrownPose | null = null
    // A round outline is told unturned: its drawn corners would lie elsewhere after a turn.
    const steps = this.#facts.symmetry === 'any-turn' ? STRAIGHT_STEPS : STEPS
    for (const [dx, dy, turn] of steps) {
      const middle = {
        xMm: from.middle.xMm + dx * stepMm,
        yMm: from.middle.yMm + dy * stepMm,
        angleRad: from.middle.angleRad + (turn * stepMm) / armMm,
      }
      const floor = best?.growth ?? from.growth
      const growth = this.#valueAt(middle, this.#task.wood.edges, floor)
      if (growth > floor) best = { growth, middle }
    }
    return best
  }
}

/** The same direction up to half turns, over −π/2, up to π/2. */
const upright = (angleRad: number): number => angleRad - Math.PI * Math.ceil(angleRad / Math.PI - 0.5)

const pick = ({ xMm, yMm, angleRad }: MiddlePose): MiddlePose => ({ xMm, yMm, angleRad })

const TRITS = [-1, 0, 1]
const STEPS = TRITS.flatMap((dx) =>
  TRITS.flatMap((dy) => TRITS.map((turn) => [dx, dy, turn] as const)),
).filter(([dx, dy, turn]) => dx !== 0 || dy !== 0 || turn !== 0)
const STRAIGHT_STEPS = STEPS.filter(([, , turn]) => turn === 0)
