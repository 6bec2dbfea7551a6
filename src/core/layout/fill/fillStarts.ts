import type { Point } from '../../geometry'
import type { FillGround } from './fillGround'
import type { FillLimits } from './fillTask'
import type { Leaf } from './leaf'
import type { OffcutProfile } from './offcutProfile'
import type { ProfilePose } from './poseMeter'
import type { RepeatableRandom } from './repeatableRandom'

/** Where a climb may begin, and which poses the grain allows. */
export class FillStarts {
  readonly #ground: FillGround
  readonly #limits: FillLimits
  readonly #random: RepeatableRandom

  constructor(ground: FillGround, limits: FillLimits, random: RepeatableRandom) {
    this.#ground = ground
    this.#limits = limits
    this.#random = random
  }

  /** Whether a leaf may lie in a pose: its grain runs along the table's, either way round, within the limit. */
  isAllowed({ grainRad }: Leaf, { axisRad }: OffcutProfile, pose: ProfilePose): boolean {
    const { grainWithinRad, mayTurnOver } = this.#limits
    if (pose.turnedOver && !mayTurnOver) return false
    if (grainWithinRad === null) return true
    const own = pose.turnedOver ? axisRad - grainRad : grainRad - axisRad
    const offRad = pose.angleRad + own - this.#ground.task.tableGrainRad
    return Math.abs(offRad - Math.PI * Math.round(offRad / Math.PI)) <= grainWithinRad + 1e-9
  }

  /** Any place in a gap, any way round that the grain allows. */
  anywhere(leaf: Leaf, profile: OffcutProfile): ProfilePose | null {
    const random = this.#random
    const turnedOver = this.#limits.mayTurnOver && random.next() < 0.5
    const target = random.pick(this.#ground.openPlaces)
    if (target === undefined) return null
    const pose = { xMm: 0, yMm: 0, angleRad: this.#anyAngle(leaf, profile, turnedOver), turnedOver }
    return movedOnto(pose, this.#placeInWood(profile), target)
  }

  /** A straight edge of the leaf along one side of the blank, slid to any gap there; the longest edge first. */
  alongSide(leaf: Leaf, profile: OffcutProfile): ProfilePose | null {
    const random = this.#random
    const index = Math.floor(random.next() * random.next() * leaf.straight.length)
    const edge = leaf.straight[index]
    const target = random.pick(this.#ground.openPlaces)
    if (edge === undefined || target === undefined) return null
    const turnedOver = this.#limits.mayTurnOver && random.next() < 0.5
    const [from, to] = [inProfile(profile, edge.from), inProfile(profile, edge.to)]
    const edgeRad = Math.atan2(to[1] - from[1], to[0] - from[0])
    const { sideRad, onto } = this.#sideNear(target)
    // A positive ring has its wood on the right of the walk; turned over, on the left.
    const angleRad = turnedOver ? sideRad + Math.PI + edgeRad : sideRad - edgeRad
    const share = random.next()
    const held: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
    const pose = movedOnto({ xMm: 0, yMm: 0, angleRad, turnedOver }, held, onto)
    return this.isAllowed(leaf, profile, pose) ? pose : null
  }

  #anyAngle({ grainRad }: Leaf, { axisRad }: OffcutProfile, turnedOver: boolean): number {
    const random = this.#random
    const { grainWithinRad } = this.#limits
    if (grainWithinRad === null) return random.between(-Math.PI, Math.PI)
    const own = turnedOver ? axisRad - grainRad : grainRad - axisRad
    const along = this.#ground.task.tableGrainRad - own + (random.next() < 0.5 ? Math.PI : 0)
    return along + (random.next() < 0.3 ? 0 : random.between(-grainWithinRad, grainWithinRad))
  }

  #placeInWood(profile: OffcutProfile): Point {
    const random = this.#random
    const station = Math.floor(random.next() * (profile.bins + 1))
    const [first, past] = [profile.spanFrom[station] ?? 0, profile.spanFrom[station + 1] ?? 0]
    const span = first + Math.floor(random.next() * (past - first))
    const u = profile.stationMm[station] ?? 0
    if (past === first) return [u, 0]
    return [u, random.between(profile.spanLowMm[span] ?? 0, profile.spanHighMm[span] ?? 0)]
  }

  /** The side of the blank nearest to a place, walked with the blank on the right, and the place on it. */
  #sideNear([x, y]: Point): { readonly sideRad: number; readonly onto: Point } {
    const { minX, minY, maxX, maxY } = this.#ground.box
    const sides = [
      { offMm: y - minY, sideRad: 0, onto: [x, minY] as const },
      { offMm: maxX - x, sideRad: Math.PI / 2, onto: [maxX, y] as const },
      { offMm: maxY - y, sideRad: Math.PI, onto: [x, maxY] as const },
      { offMm: x - minX, sideRad: -Math.PI / 2, onto: [minX, y] as const },
    ]
    return sides.reduce((nearest, side) => (side.offMm < nearest.offMm ? side : nearest))
  }
}

/** The pose moved so that a place of the profile lies on a place of the table. */
function movedOnto(pose: ProfilePose, [u, v]: Point, [x, y]: Point): ProfilePose {
  const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
  const side = pose.turnedOver ? -v : v
  return { ...pose, xMm: x - (u * cos - side * sin), yMm: y - (u * sin + side * cos) }
}

function inProfile({ pivot, axisRad }: OffcutProfile, [x, y]: Point): Point {
  const [cos, sin] = [Math.cos(axisRad), Math.sin(axisRad)]
  const [dx, dy] = [x - pivot[0], y - pivot[1]]
  return [dx * cos + dy * sin, dy * cos - dx * sin]
}
