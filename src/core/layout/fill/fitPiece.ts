import { clipToBox } from '../../cuts'
import {
  applyIsometryToRegion,
  type Region,
  regionsAreaMm2,
  type SlabPoint,
  spanPoint,
  tablePoint,
} from '../../geometry'
import type { FillGround } from './fillGround'
import type { FillPiece } from './fillProposal'
import type { FillLimits } from './fillTask'
import { JointMeter, type NearestWood } from './jointMeter'
import type { OffcutProfile } from './offcutProfile'
import { cutOut, runCuts, slabPose, trimCuts } from './pieceCutting'
import type { CleanRun, ProfilePose } from './poseMeter'

/** A run of an offcut in a pose. */
export interface FitInput {
  readonly offcutKey: string
  readonly region: Region<SlabPoint>
  readonly profile: OffcutProfile
  readonly pose: ProfilePose
  readonly run: CleanRun
}

export interface FittedPiece {
  readonly piece: FillPiece
  readonly profilePose: ProfilePose
  readonly leftovers: readonly Region<SlabPoint>[]
}

const MOST_NUDGES = 8
const MOST_SHORTENINGS = 4
/** Nudged a hair further than needed, so that rounding cannot undo it, mm. */
const NUDGE_SPARE_MM = 0.02
/** Wood that is as near as this gives no direction to move off in, mm. */
const LEAST_PUSH_MM = 0.1

/**
 * Cuts a piece and fits it where no joint is then too narrow; null where that cannot be had.
 * Method: exact distances decide. A piece that is too near is moved off by what is missing; where that does not help, it
 * loses the wood at the place that is too near, down to the longer side of it. Rules: LAY-23.
 */
export function fitPiece(
  ground: FillGround,
  laid: readonly FillPiece[],
  limits: FillLimits,
  input: FitInput,
): FittedPiece | null {
  const others = new JointMeter(limits.leastJointMm + 1)
  for (const { onTable } of laid) others.add(onTable)
  const fitting = new Fitting(ground, others, limits, input)
  let run: CleanRun | null = input.run
  for (let shortening = 0; run !== null && shortening <= MOST_SHORTENINGS; shortening += 1) {
    const found = fitting.nudged(run)
    if (found === null || 'piece' in found) return found
    run = fitting.shorter(run, found.tooNearU)
  }
  return null
}

class Fitting {
  constructor(
    readonly ground: FillGround,
    readonly others: JointMeter,
    readonly limits: FillLimits,
    readonly input: FitInput,
  ) {}

  /** The piece where it was moved to; or, where moving does not help, how far along its axis it was too near at first. */
  nudged(run: CleanRun): FittedPiece | { readonly tooNearU: number } | null {
    let pose = this.input.pose
    let tooNearU: number | null = null
    for (let nudge = 0; nudge <= MOST_NUDGES; nudge += 1) {
      const fitted = this.#cutAt(pose, run)
      if (fitted === null) return null
      const near = this.#nearest(fitted.piece)
      const missingMm = this.limits.leastJointMm - near.distanceMm
      if (missingMm <= 0) return { ...fitted, piece: { ...fitted.piece, leastJointMm: near.distanceMm } }
      const [x, y] = [near.onFace[0] - pose.xMm, near.onFace[1] - pose.yMm]
      tooNearU ??= x * Math.cos(pose.angleRad) + y * Math.sin(pose.angleRad)
      if (near.distanceMm < LEAST_PUSH_MM) break
      const push = (missingMm + NUDGE_SPARE_MM) / near.distanceMm
      pose = {
        ...pose,
        xMm: pose.xMm + (near.onFace[0] - near.onWood[0]) * push,
        yMm: pose.yMm + (near.onFace[1] - near.onWood[1]) * push,
      }
    }
    return { tooNearU: tooNearU ?? 0 }
  }

  /** The longer part of a run beside the place that is too near. */
  shorter(run: CleanRun, tooNearU: number): CleanRun | null {
    const { stepMm, bins } = this.input.profile
    const bin = Math.min(run.pastBin - 1, Math.max(run.fromBin, Math.floor(tooNearU / stepMm + bins / 2)))
    const isBefore = bin - run.fromBin > run.pastBin - 1 - bin
    const shorter = isBefore ? { ...run, pastBin: bin } : { ...run, fromBin: bin + 1 }
    return (shorter.pastBin - shorter.fromBin) * stepMm < this.limits.leastLengthMm ? null : shorter
  }

  #cutAt(profilePose: ProfilePose, run: CleanRun): FittedPiece | null {
    const { profile, region, offcutKey } = this.input
    const { kerfMm, costPerPieceMm2 } = this.limits
    const pose = slabPose(profile, profilePose)
    const out = cutOut(region, [
      () => runCuts(profile, run, kerfMm),
      (part) => trimCuts(part, pose, this.ground.box, kerfMm),
    ])
    if (out === null) return null
    const onTable = applyIsometryToRegion(pose, out.region, tablePoint)
    const areaMm2 = regionsAreaMm2(clipToBox([onTable], this.ground.box))
    if (areaMm2 <= costPerPieceMm2) return null
    const anchor = spanPoint(out.region)
    const { cuts, region: onSlab, leftovers } = out
    const piece = { offcutKey, anchor, pose, cuts, onSlab, onTable, areaMm2, leastJointMm: 0 }
    return { piece, profilePose, leftovers }
  }

  #nearest({ onTable }: FillPiece): NearestWood {
    const [a, b] = [this.ground.joints.nearest(onTable), this.others.nearest(onTable)]
    return a.distanceMm <= b.distanceMm ? a : b
  }
}
