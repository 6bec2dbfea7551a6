import { pointDistanceMm, type SlabPoint, slabPoint } from '../geometry'
import type { NamedCut } from './pieceTree'
import { type NamedMark, type StationPoint, stationPoint } from './stationPoint'

/** A check nearer than this to its end of the cut is too short to show an error in the line. */
const LEAST_CHECK_MM = 300

/** One taped length that is not used to set the line out: at the bench it must agree. */
export interface CheckDistance {
  /** Name of the mark it is taped from; null: from the cut's own other end. */
  readonly fromMark: string | null
  readonly toPoint: 'from' | 'to'
  readonly distanceMm: number
}

export interface SetOutLine {
  readonly from: StationPoint
  readonly to: StationPoint
  readonly lengthMm: number
  readonly wasteSide: 'left' | 'right'
  readonly angleToDatumRad: number
  readonly check: CheckDistance
}

/**
 * A cut as it is chalked: from where it enters the wood to where it leaves it, walked so that the station grows.
 * @param cut      its line, mm in the slab frame
 * @param extentMm first and last place where it meets wood, distances from the line's `from`
 * @param marks    the marks whose taped distances can serve as a check
 * Rules: CUT-6, CUT-7.
 */
export function setOutCut(
  cut: NamedCut,
  extentMm: readonly [number, number],
  marks: readonly NamedMark[],
): SetOutLine {
  const { from, to } = cut.line
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  const at = (alongMm: number): SlabPoint =>
    slabPoint(
      from[0] + ((to[0] - from[0]) * alongMm) / lengthMm,
      from[1] + ((to[1] - from[1]) * alongMm) / lengthMm,
    )
  const ends = [at(extentMm[0]), at(extentMm[1])] as const
  const backwards = ends[1][0] < ends[0][0]
  const start = stationPoint(backwards ? ends[1] : ends[0], marks)
  const end = stationPoint(backwards ? ends[0] : ends[1], marks)
  return {
    from: start,
    to: end,
    lengthMm: pointDistanceMm(start.at, end.at),
    wasteSide: backwards ? otherSide(cut.wasteSide) : cut.wasteSide,
    angleToDatumRad: Math.atan2(end.at[1] - start.at[1], end.at[0] - start.at[0]),
    check: checkDistance(start, end),
  }
}

const otherSide = (side: 'left' | 'right'): 'left' | 'right' => (side === 'left' ? 'right' : 'left')

/** From the nearest mark that is far enough off to the cut's farther end; without marks, the cut's own length. */
function checkDistance(start: StationPoint, end: StationPoint): CheckDistance {
  const mark = end.fromMarks.find(({ distanceMm }) => distanceMm >= LEAST_CHECK_MM) ?? end.fromMarks.at(-1)
  return mark === undefined
    ? { fromMark: null, toPoint: 'to', distanceMm: pointDistanceMm(start.at, end.at) }
    : { fromMark: mark.markName, toPoint: 'to', distanceMm: mark.distanceMm }
}
