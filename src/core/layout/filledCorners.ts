import type { Bounds, Region, TablePoint } from '../geometry'
import { distanceFromSide, ON_SIDE_MM } from './distanceFromSide'
import { isAlongX, type SideChoices, type TableSide } from './tableSides'

/** Stretches at the two ends of a sawn side that a filled neighbour makes up with resin, mm. */
export interface FilledStretches {
  /** From the side's low end: start for far and near, far for start and end. */
  readonly before: number
  readonly beyond: number
}

export type FilledCorners = Readonly<Record<TableSide, FilledStretches>>

/** Wood on less of a sawn side than this share, and it is the side itself that is short. Common practice, no source. */
const LEAST_SAWN_SHARE = 0.5

const NONE: FilledStretches = { before: 0, beyond: 0 }

/** The sides that meet a side: at its low end and at its high end. */
export const neighboursOf = (side: TableSide): readonly [before: TableSide, beyond: TableSide] =>
  isAlongX(side) ? ['start', 'end'] : ['far', 'near']

/**
 * Corners without wood where a sawn side meets a filled one. A live edge that falls away towards its end leaves such a
 * corner on every slab; the filled side is made straight there too, and the sawn side has its wood as far as there is
 * width for it.
 * @param edgeGaps gaps within the finished outline
 * Rules: LAY-27.
 */
export function cornersFilled(
  edgeGaps: readonly Region<TablePoint>[],
  bounds: Bounds,
  sides: SideChoices,
): FilledCorners {
  const of = (side: TableSide): FilledStretches =>
    sides[side].finish === 'sawn' ? filledStretches(edgeGaps, bounds, side, sides) : NONE
  return { start: of('start'), end: of('end'), far: of('far'), near: of('near') }
}

function filledStretches(
  edgeGaps: readonly Region<TablePoint>[],
  bounds: Bounds,
  side: TableSide,
  sides: SideChoices,
): FilledStretches {
  const axis = isAlongX(side) ? 0 : 1
  const [low, high] = axis === 0 ? [bounds.minX, bounds.maxX] : [bounds.minY, bounds.maxY]
  const [before, beyond] = neighboursOf(side)
  const runs = openRuns(edgeGaps, bounds, side, axis)
  const first = runs.find(([from]) => from < low + ON_SIDE_MM)
  const last = runs.find(([, to]) => to > high - ON_SIDE_MM)
  if (first !== undefined && first === last) return NONE
  const stretches = {
    before: first !== undefined && sides[before].finish === 'filled' ? first[1] - low : 0,
    beyond: last !== undefined && sides[beyond].finish === 'filled' ? high - last[0] : 0,
  }
  const woodShare = 1 - (stretches.before + stretches.beyond) / (high - low)
  return woodShare < LEAST_SAWN_SHARE ? NONE : stretches
}

type Run = readonly [from: number, to: number]

/** Where gaps open on a side, in order along it; runs that touch are one. */
function openRuns(
  regions: readonly Region<TablePoint>[],
  bounds: Bounds,
  side: TableSide,
  axis: 0 | 1,
): readonly Run[] {
  const pieces = regions
    .flatMap(({ outer }) => outer.map((a, index) => [a, outer[(index + 1) % outer.length] ?? a] as const))
    .filter((ends) => ends.every((point) => Math.abs(distanceFromSide(point, bounds, side)) < ON_SIDE_MM))
    .map(([a, b]): Run => [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])])
    .toSorted((a, b) => a[0] - b[0])
  const runs: Run[] = []
  for (const piece of pieces) {
    const last = runs.at(-1)
    if (last !== undefined && piece[0] <= last[1] + ON_SIDE_MM) {
      runs[runs.length - 1] = [last[0], Math.max(last[1], piece[1])]
    } else runs.push(piece)
  }
  return runs
}

/** Whether a place along a side lies in a corner that its neighbour fills. */
export const isInCorner = (
  at: number,
  [low, high]: readonly [number, number],
  { before, beyond }: FilledStretches,
): boolean => at < low + before || at > high - beyond
