import { pointDistanceMm, type SlabPoint } from '../geometry'

export interface NamedMark {
  readonly name: string
  readonly at: SlabPoint
}

/** A place on the slab as it is set out at the bench. */
export interface StationPoint {
  readonly at: SlabPoint
  /** Along the datum from its first anchor; negative lies before it. */
  readonly alongMm: number
  /** Square to the datum; positive lies to the right of one who looks along it (y is down in the slab frame). */
  readonly offsetMm: number
  /** Taped distances from the marks, nearest first. */
  readonly fromMarks: readonly { readonly markName: string; readonly distanceMm: number }[]
}

/**
 * Station, offset and taped distances of a place. In the slab frame the datum is the x axis, so station and offset are
 * the coordinates themselves.
 * Rules: CUT-6.
 */
export function stationPoint(at: SlabPoint, marks: readonly NamedMark[]): StationPoint {
  const fromMarks = marks
    .map((mark) => ({ markName: mark.name, distanceMm: pointDistanceMm(mark.at, at) }))
    .sort((a, b) => a.distanceMm - b.distanceMm)
  return { at, alongMm: at[0], offsetMm: at[1], fromMarks }
}
