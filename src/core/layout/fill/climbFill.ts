import type { Candidate, FillLayout } from './fillLayout'
import type { FillStarts } from './fillStarts'
import type { Leaf } from './leaf'
import type { OffcutProfile } from './offcutProfile'
import type { ProfilePose } from './poseMeter'
import type { RepeatableRandom } from './repeatableRandom'

const FIRST_STEP_MM = 20
const LEAST_STEP_MM = 0.12
/** A step that helped is made longer, one that did not shorter: even odds at one success in seven or so. */
const LONGER = 1.7
const SHORTER = 0.92

/** Climbs from poses of leaves; every look is counted. */
export class FillClimb {
  readonly #layout: FillLayout
  readonly #starts: FillStarts
  readonly #random: RepeatableRandom
  readonly #spend: () => void

  constructor(layout: FillLayout, starts: FillStarts, random: RepeatableRandom, spend: () => void) {
    this.#layout = layout
    this.#starts = starts
    this.#random = random
    this.#spend = spend
  }

  look(leaf: Leaf, profile: OffcutProfile, pose: ProfilePose): Candidate {
    this.#spend()
    return { leaf, profile, pose, worthMm2: this.#layout.look(profile, pose) }
  }

  /** The best of so many starts, along the sides and anywhere, climbed from a few of them; null: nothing is worth laying. */
  best(leaf: Leaf, effort: number, near: Candidate | null): Candidate | null {
    const starts = this.#goodStarts(leaf, 24 * effort)
    if (near !== null) starts.push(near)
    starts.sort((a, b) => b.worthMm2 - a.worthMm2)
    let best: Candidate | null = null
    for (const start of starts.slice(0, Math.ceil(2 * effort))) {
      const climbed = this.#climb(start, 120 * effort)
      if (best === null || climbed.worthMm2 > best.worthMm2) best = climbed
    }
    return best
  }

  #goodStarts(leaf: Leaf, count: number): Candidate[] {
    const starts: Candidate[] = []
    for (const profile of leaf.profiles) {
      for (let start = 0; start < count; start += 1) {
        const pose =
          start % 2 === 0 ? this.#starts.alongSide(leaf, profile) : this.#starts.anywhere(leaf, profile)
        if (pose === null) continue
        const found = this.look(leaf, profile, pose)
        if (found.worthMm2 > 0) starts.push(found)
      }
    }
    return starts
  }

  /** Adaptive steps: longer after one that helped, shorter after one that did not. */
  #climb(from: Candidate, most: number): Candidate {
    let best = from
    let stepMm = FIRST_STEP_MM
    for (let tries = 0; tries < most && stepMm > LEAST_STEP_MM; tries += 1) {
      const pose = this.#near(best, stepMm)
      const found = this.#starts.isAllowed(from.leaf, from.profile, pose)
        ? this.look(from.leaf, from.profile, pose)
        : null
      if (found !== null && found.worthMm2 > best.worthMm2) {
        best = found
        stepMm *= LONGER
      } else stepMm *= SHORTER
    }
    return best
  }

  /** Moved along and across the axis and turned, now the one, now the other, now both. */
  #near({ pose, profile }: Candidate, stepMm: number): ProfilePose {
    const random = this.#random
    const kind = random.next()
    const along = kind < 0.35 || kind > 0.6 ? random.bell() * stepMm : 0
    const across = kind > 0.35 ? random.bell() * stepMm * 0.6 : 0
    const turn = kind > 0.5 ? (random.bell() * stepMm) / Math.max(40, profile.radiusMm) : 0
    const [cos, sin] = [Math.cos(pose.angleRad), Math.sin(pose.angleRad)]
    // Turned about any place along the wood, not its middle alone: one end often lies well already.
    const pivotU = turn === 0 ? 0 : random.between(-1, 1) * profile.radiusMm
    const [turnedCos, turnedSin] = [Math.cos(pose.angleRad + turn), Math.sin(pose.angleRad + turn)]
    return {
      xMm: pose.xMm + along * cos - across * sin + pivotU * (cos - turnedCos),
      yMm: pose.yMm + along * sin + across * cos + pivotU * (sin - turnedSin),
      angleRad: pose.angleRad + turn,
      turnedOver: pose.turnedOver,
    }
  }
}
