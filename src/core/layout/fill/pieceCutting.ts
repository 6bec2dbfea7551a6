import { type Line, makeCut, type StraightCut } from '../../cuts'
import {
  applyIsometry,
  type Bounds,
  invertIsometry,
  type Isometry,
  type Point,
  type Region,
  regionAreaMm2,
  type SlabPoint,
  slabPoint,
} from '../../geometry'
import type { OffcutProfile } from './offcutProfile'
import type { CleanRun, ProfilePose } from './poseMeter'

/** A piece cut out of an offcut, with what is left of it. */
export interface CutOut {
  readonly region: Region<SlabPoint>
  /** In the order of work; each divides what then holds the piece. */
  readonly cuts: readonly StraightCut<SlabPoint>[]
  readonly leftovers: readonly Region<SlabPoint>[]
}

/** What sticks out of the blank by less than this is planed off with the edge, not sawn, mm. */
const TRIM_LEAST_MM = 0.5
/** Leftovers smaller than this are dust, mm². */
const LEAST_LEFTOVER_MM2 = 1

/** Pose of the slab frame in the table frame that lays the profile's axis where the pose says. */
export function slabPose({ pivot, axisRad }: OffcutProfile, pose: ProfilePose): Isometry {
  const { turnedOver } = pose
  const angleRad = turnedOver ? pose.angleRad + axisRad : pose.angleRad - axisRad
  const turn: Isometry = { xMm: 0, yMm: 0, angleRad, turnedOver }
  const [x, y] = applyIsometry(turn, pivot, (px, py): Point => [px, py])
  const wrappedRad =
    Math.abs(angleRad) <= Math.PI ? angleRad : Math.atan2(Math.sin(angleRad), Math.cos(angleRad))
  return { xMm: pose.xMm - x, yMm: pose.yMm - y, angleRad: wrappedRad, turnedOver }
}

/** The same pose as that of another profile of the same wood. */
export function profilePose({ pivot, axisRad }: OffcutProfile, pose: Isometry): ProfilePose {
  const [xMm, yMm] = applyIsometry(pose, pivot, (x, y): Point => [x, y])
  const { turnedOver } = pose
  return { xMm, yMm, angleRad: turnedOver ? pose.angleRad - axisRad : pose.angleRad + axisRad, turnedOver }
}

/** The two crosscuts of a run, as far as the run does not end with the wood itself. */
export function runCuts(
  profile: OffcutProfile,
  run: CleanRun,
  kerfMm: number,
): readonly StraightCut<SlabPoint>[] {
  const { bins, stationMm } = profile
  const cuts: StraightCut<SlabPoint>[] = []
  if (run.fromBin > 0) {
    cuts.push({ line: lineAcross(profile, stationMm[run.fromBin] ?? 0), kerfMm, wasteSide: 'right' })
  }
  if (run.pastBin < bins) {
    cuts.push({ line: lineAcross(profile, stationMm[run.pastBin] ?? 0), kerfMm, wasteSide: 'left' })
  }
  return cuts
}

/** A line across the axis, walked along v: what lies farther along the axis is on its left. */
function lineAcross({ pivot, axisRad, radiusMm }: OffcutProfile, u: number): Line<SlabPoint> {
  const [cos, sin] = [Math.cos(axisRad), Math.sin(axisRad)]
  const at = (v: number): SlabPoint => slabPoint(pivot[0] + u * cos - v * sin, pivot[1] + u * sin + v * cos)
  return { from: at(-radiusMm), to: at(radiusMm) }
}

/** Cuts along the sides of the blank over which the piece sticks out once it is laid. */
export function trimCuts(
  region: Region<SlabPoint>,
  pose: Isometry,
  box: Bounds,
  kerfMm: number,
): readonly StraightCut<SlabPoint>[] {
  const laid = region.outer.map((point) => applyIsometry(pose, point, (x, y): Point => [x, y]))
  const xs = laid.map(([x]) => x)
  const ys = laid.map(([, y]) => y)
  const { minX, minY, maxX, maxY } = box
  const out = (byMm: number): boolean => byMm > TRIM_LEAST_MM
  const sides: (readonly [Point, Point])[] = []
  // Walked with the blank on the right, as the sides of the footprint are.
  if (out(minY - Math.min(...ys)))
    sides.push([
      [minX, minY],
      [maxX, minY],
    ])
  if (out(Math.max(...xs) - maxX))
    sides.push([
      [maxX, minY],
      [maxX, maxY],
    ])
  if (out(Math.max(...ys) - maxY))
    sides.push([
      [maxX, maxY],
      [minX, maxY],
    ])
  if (out(minX - Math.min(...xs)))
    sides.push([
      [minX, maxY],
      [minX, minY],
    ])
  const toSlab = invertIsometry(pose)
  return sides.map(([from, to]) => ({
    line: { from: applyIsometry(toSlab, from, slabPoint), to: applyIsometry(toSlab, to, slabPoint) },
    kerfMm,
    wasteSide: pose.turnedOver ? 'right' : 'left',
  }))
}

type MakeCuts = (region: Region<SlabPoint>) => readonly StraightCut<SlabPoint>[]

/**
 * Makes cuts one after the other, going on with the largest part that is kept; null when nothing is.
 * @param stages each is asked for its cuts when those before it are made
 */
export function cutOut(whole: Region<SlabPoint>, stages: readonly MakeCuts[]): CutOut | null {
  let out: CutOut | null = { region: whole, cuts: [], leftovers: [] }
  for (const stage of stages) {
    for (const cut of out === null ? [] : stage(out.region)) out = out === null ? null : afterCut(out, cut)
  }
  return out
}

function afterCut({ region, cuts, leftovers }: CutOut, cut: StraightCut<SlabPoint>): CutOut | null {
  const { kept, waste, extentMm } = makeCut(region, cut)
  if (extentMm === null && waste.length === 0) return { region, cuts, leftovers }
  const [largest, ...others] = kept.toSorted((a, b) => regionAreaMm2(b) - regionAreaMm2(a))
  if (largest === undefined) return null
  const fallen = [...others, ...waste].filter((face) => regionAreaMm2(face) > LEAST_LEFTOVER_MM2)
  return {
    region: largest,
    cuts: [...cuts, asLongAsWood(cut, extentMm)],
    leftovers: [...leftovers, ...fallen],
  }
}

/** The same cut drawn no farther than it meets wood. */
function asLongAsWood(
  cut: StraightCut<SlabPoint>,
  extentMm: readonly [number, number] | null,
): StraightCut<SlabPoint> {
  const { from, to } = cut.line
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  // A line a millimetre long would no longer say its direction.
  if (extentMm === null || extentMm[1] - extentMm[0] < 1) return cut
  const at = (mm: number): SlabPoint =>
    slabPoint(from[0] + ((to[0] - from[0]) * mm) / lengthMm, from[1] + ((to[1] - from[1]) * mm) / lengthMm)
  return { ...cut, line: { from: at(extentMm[0]), to: at(extentMm[1]) } }
}
