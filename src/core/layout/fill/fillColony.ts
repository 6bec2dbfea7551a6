import { FillClimb } from './climbFill'
import type { FillGround } from './fillGround'
import { type Candidate, FillLayout, type LaidFill } from './fillLayout'
import { FillStarts } from './fillStarts'
import type { FillLimits } from './fillTask'
import type { Leaf } from './leaf'
import { profilePose } from './pieceCutting'
import { RepeatableRandom } from './repeatableRandom'

/** A layout that is a little worse than the best may be built on, by this share of it. */
const MAY_FALL_SHARE = 0.015
/** After so many rounds without a better layout it goes on from the best one again. */
const MOST_ROUNDS_ASTRAY = 12

/** One line of search under its own limits: lay greedily, then take some pieces out and lay anew, again and again. */
export class FillColony {
  readonly layout: FillLayout
  readonly #random: RepeatableRandom
  readonly #climb: FillClimb
  #best: readonly LaidFill[] = []
  #bestWorthMm2 = 0
  #roundsAstray = 0

  constructor(ground: FillGround, limits: FillLimits, seed: number, spend: () => void) {
    this.#random = new RepeatableRandom(seed)
    this.layout = new FillLayout(ground, limits)
    const starts = new FillStarts(ground, limits, this.#random)
    this.#climb = new FillClimb(this.layout, starts, this.#random, spend)
  }

  /** The best layout so far. */
  get best(): readonly LaidFill[] {
    return this.#best
  }

  get bestWorthMm2(): number {
    return this.#bestWorthMm2
  }

  /** Lays whatever is worth laying, the most worthy first. Yields after every piece. */
  *lay(effort: number): Generator<undefined, void, undefined> {
    const known = new Map<Leaf, Candidate | null>()
    for (;;) {
      let best: Candidate | null = null
      for (const leaf of this.layout.leaves) {
        const candidate = this.#candidate(leaf, known, effort)
        known.set(leaf, candidate)
        if (candidate !== null && (best === null || candidate.worthMm2 > best.worthMm2)) best = candidate
        yield
      }
      if (best === null) break
      known.delete(best.leaf)
      if (!this.layout.lay(best)) known.set(best.leaf, null)
      else this.#startLeftovers(known)
    }
    this.#remember()
  }

  /** Takes some pieces out, lays anew, and keeps what came of it or goes back. Yields on the way. */
  *again(effort: number): Generator<undefined, void, undefined> {
    const before = this.layout.laid
    const beforeMm2 = this.layout.worthMm2
    this.layout.takeOut(this.#ruined())
    yield* this.lay(effort)
    const leastMm2 = Math.min(beforeMm2, this.#bestWorthMm2 * (1 - MAY_FALL_SHARE))
    if (this.layout.worthMm2 < leastMm2) this.layout.restore(before)
    this.#roundsAstray += 1
    if (this.#roundsAstray > MOST_ROUNDS_ASTRAY) {
      this.#roundsAstray = 0
      this.layout.restore(this.#best)
    }
  }

  /** What a leaf would bring: as known, if nothing came in its way since. */
  #candidate(leaf: Leaf, known: Map<Leaf, Candidate | null>, effort: number): Candidate | null {
    if (leaf.profiles.length === 0) return null
    const before = known.get(leaf)
    if (before === null) return null
    if (before !== undefined) {
      const now = this.#climb.look(leaf, before.profile, before.pose)
      if (now.worthMm2 >= 0.98 * before.worthMm2) return now
      return this.#climb.best(leaf, effort, now.worthMm2 > 0 ? now : null)
    }
    return this.#climb.best(leaf, effort, null)
  }

  /** What the other clean runs of the same pose would bring lies still there for the leftovers. */
  #startLeftovers(known: Map<Leaf, Candidate | null>): void {
    const last = this.layout.laid.at(-1)
    if (last === undefined) return
    for (const leaf of last.leaves) {
      const [profile] = leaf.profiles
      if (profile === undefined) continue
      const found = this.#climb.look(leaf, profile, profilePose(profile, last.piece.pose))
      if (found.worthMm2 > 0) known.set(leaf, found)
    }
  }

  #ruined(): ReadonlySet<LaidFill> {
    const { laid } = this.layout
    const kind = this.#random.next()
    if (kind < 0.06) return new Set(laid)
    const count = kind < 0.55 ? 1 : kind < 0.85 ? 2 : 3
    const first = this.#random.pick(laid)
    if (first === undefined) return new Set()
    // Neighbours on the table make room together.
    const [x, y] = [first.profilePose.xMm, first.profilePose.yMm]
    const farMm = ({ profilePose }: LaidFill): number => Math.hypot(profilePose.xMm - x, profilePose.yMm - y)
    return new Set(laid.toSorted((a, b) => farMm(a) - farMm(b)).slice(0, count))
  }

  #remember(): void {
    if (this.layout.worthMm2 <= this.#bestWorthMm2 + 1) return
    this.#bestWorthMm2 = this.layout.worthMm2
    this.#best = this.layout.laid
    this.#roundsAstray = 0
  }
}
