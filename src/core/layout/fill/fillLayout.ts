import { type ClearanceField, copiedField, type FieldStamp, fieldStamp, lowerField } from './clearanceField'
import type { FillGround } from './fillGround'
import type { FillPiece } from './fillProposal'
import type { FillLimits } from './fillTask'
import { fitPiece } from './fitPiece'
import { type Leaf, leafOf } from './leaf'
import type { OffcutProfile } from './offcutProfile'
import { type CleanRun, PoseMeter, type ProfilePose } from './poseMeter'

/** A leaf in a pose, with the run of it that is to be laid. */
export interface Candidate {
  readonly leaf: Leaf
  readonly profile: OffcutProfile
  readonly pose: ProfilePose
  readonly worthMm2: number
}

export interface LaidFill {
  readonly piece: FillPiece
  readonly from: Leaf
  readonly profile: OffcutProfile
  readonly profilePose: ProfilePose
  readonly leaves: readonly Leaf[]
  readonly stamp: FieldStamp | null
}

/** Pieces laid so far, the wood still to be had, and how clear every place is of all wood. */
export class FillLayout {
  readonly #ground: FillGround
  readonly #limits: FillLimits
  readonly #whole: readonly Leaf[]
  readonly #meter: PoseMeter
  #laid: readonly LaidFill[] = []
  #leaves: readonly Leaf[]
  #field: ClearanceField

  constructor(ground: FillGround, limits: FillLimits) {
    this.#ground = ground
    this.#limits = limits
    this.#whole = ground.task.offcuts.map((offcut) => leafOf(offcut, offcut.region, limits))
    this.#meter = new PoseMeter(ground.box, limits)
    this.#leaves = this.#whole
    this.#field = copiedField(ground.field)
  }

  get laid(): readonly LaidFill[] {
    return this.#laid
  }

  get leaves(): readonly Leaf[] {
    return this.#leaves
  }

  get worthMm2(): number {
    return this.#laid.reduce((sum, { piece }) => sum + piece.areaMm2 - this.#limits.costPerPieceMm2, 0)
  }

  /** Worth of a pose of a leaf, all its clean runs together, mm². */
  look(profile: OffcutProfile, pose: ProfilePose): number {
    return this.#meter.worthMm2(this.#field, profile, pose)
  }

  /** Goes back to pieces that lay here before, in their order. */
  restore(laid: readonly LaidFill[]): void {
    this.#laid = laid
    this.#field = copiedField(this.#ground.field)
    let leaves = this.#whole
    for (const one of laid) {
      if (one.stamp !== null) lowerField(this.#field, one.stamp)
      leaves = [...leaves.filter((leaf) => leaf !== one.from), ...one.leaves]
    }
    this.#leaves = leaves
  }

  /** Takes pieces out again, with those that were cut from what they left; what they were cut from is whole again. */
  takeOut(gone: ReadonlySet<LaidFill>): void {
    const lost = new Set<Leaf>()
    const stay: LaidFill[] = []
    for (const one of this.#laid) {
      if (gone.has(one) || lost.has(one.from)) one.leaves.forEach((leaf) => lost.add(leaf))
      else stay.push(one)
    }
    this.restore(stay)
  }

  /** Cuts the best run of a pose and lays it, if it can be fitted exactly. @returns whether it lies */
  lay({ leaf, profile, pose }: Candidate): boolean {
    this.look(profile, pose)
    const run: CleanRun | null = this.#meter.bestRun
    if (run === null) return false
    const { offcutKey, region, grainRad } = leaf
    const fitted = fitPiece(
      this.#ground,
      this.#laid.map(({ piece }) => piece),
      this.#limits,
      { offcutKey, region, profile, pose, run },
    )
    if (fitted === null) return false
    const leaves = fitted.leftovers.map((left) => leafOf({ key: offcutKey, grainRad }, left, this.#limits))
    const stamp = fieldStamp(this.#field, fitted.piece.onTable)
    if (stamp !== null) lowerField(this.#field, stamp)
    const { piece, profilePose } = fitted
    this.#laid = [...this.#laid, { piece, from: leaf, profile, profilePose, leaves, stamp }]
    this.#leaves = [...this.#leaves.filter((one) => one !== leaf), ...leaves]
    return true
  }
}
