import {
  convexHull,
  isPointInRing,
  type Ring,
  ringBounds,
  signedDistanceToLineMm,
  tablePoint,
  type TablePoint,
} from '../geometry'
import { InvariantError } from '../units'

/** What the top stands on. */
export type BaseKind = 'four-legs' | 'two-frames' | 'pedestal'

export interface BasePlace {
  readonly kind: BaseKind
  /** From the ends of the top to the feet. */
  readonly insetLengthMm: number
  /** From its long sides. */
  readonly insetWidthMm: number
}

/**
 * Feet of a base as corners of the area that it stands on.
 * @param outline the finished top; a pedestal's foot lies in its middle and is as large as the insets leave
 * @throws InvariantError when the insets leave nothing between the feet
 * Rules: HAND-3.
 */
export function feetOf(
  outline: Ring<TablePoint>,
  { insetLengthMm, insetWidthMm }: BasePlace,
): Ring<TablePoint> {
  const { minX, minY, maxX, maxY } = ringBounds(outline)
  const [left, right] = [minX + insetLengthMm, maxX - insetLengthMm]
  const [far, near] = [minY + insetWidthMm, maxY - insetWidthMm]
  if (!(left < right && far < near))
    throw new InvariantError('feet stand apart', { insetLengthMm, insetWidthMm })
  return [tablePoint(left, far), tablePoint(right, far), tablePoint(right, near), tablePoint(left, near)]
}

export interface TipEdge {
  /** Middle of the line between two feet about which the top would turn. */
  readonly at: TablePoint
  /** Greatest reach of the top beyond that line. */
  readonly overhangMm: number
  /** From the line to where the whole balances; negative: it falls by itself. */
  readonly holdMm: number
  /** Mass put down at the edge that lifts the other side; null: no edge reaches beyond. */
  readonly tipsAtKg: number | null
}

export interface Stance {
  readonly edges: readonly TipEdge[]
  /** The edge that tips first; null where nothing tips. */
  readonly worst: TipEdge | null
  readonly isStanding: boolean
}

/** A grown person who sits down or leans on an edge, kg. Common practice, no source. */
export const LEANING_KG = 80

/**
 * Whether a table stands, and what tips it.
 * @param feet    corners that the base stands on, at least three not in a line
 * @param baseKg  of the base, thought to weigh in the middle of the feet
 * @param topKg   of the top, and where it balances
 * Method: about each line between neighbouring feet: (W·a)/b, W the whole weight, a its distance inside the line, b the
 * top's greatest reach outside it. Level floor, nothing moving.
 * Rules: HAND-3.
 */
export function stance(
  outline: Ring<TablePoint>,
  feet: Ring<TablePoint>,
  top: { readonly massKg: number; readonly centre: TablePoint },
  baseKg: number,
): Stance {
  const hull = convexHull(feet)
  const { minX, minY, maxX, maxY } = ringBounds(feet)
  const whole = top.massKg + baseKg
  const middle = (at: 0 | 1, lower: number, upper: number): number =>
    (top.massKg * top.centre[at] + (baseKg * (lower + upper)) / 2) / whole
  const centre = tablePoint(middle(0, minX, maxX), middle(1, minY, maxY))
  const edges = hull.map((from, index) => {
    const to = hull[(index + 1) % hull.length] ?? from
    return tipEdge(from, to, outline, feet, centre, whole)
  })
  const worst = edges.reduce<TipEdge | null>(
    (found, edge) => (edge.tipsAtKg !== null && (found?.tipsAtKg ?? Infinity) > edge.tipsAtKg ? edge : found),
    null,
  )
  return { edges, worst, isStanding: isPointInRing(centre, hull) }
}

function tipEdge(
  from: TablePoint,
  to: TablePoint,
  outline: Ring<TablePoint>,
  feet: Ring<TablePoint>,
  centre: TablePoint,
  wholeKg: number,
): TipEdge {
  // Inside is where the other feet are, whichever way round the hull goes.
  const inward = Math.sign(feet.reduce((sum, foot) => sum + signedDistanceToLineMm(foot, from, to), 0))
  const holdMm = inward * signedDistanceToLineMm(centre, from, to)
  const reachMm = Math.max(...outline.map((point) => -inward * signedDistanceToLineMm(point, from, to)))
  return {
    at: tablePoint((from[0] + to[0]) / 2, (from[1] + to[1]) / 2),
    overhangMm: Math.max(0, reachMm),
    holdMm,
    tipsAtKg: reachMm > 1e-6 ? Math.max(0, (wholeKg * holdMm) / reachMm) : null,
  }
}

/** Width of a place at the table and depth of a setting, mm: 24 in and 350 mm (dining guides, read). */
export const PLACE_WIDTH_MM = 600
const PLACE_DEPTH_MM = 350

export interface Seats {
  readonly alongEachSide: number
  readonly atEachEnd: number
  readonly total: number
}

/**
 * People who sit round a table.
 * @param placeMm width of a place
 * Method: whole places along each long side; along the ends what is left between the settings at the corners, or the
 * whole end where it is more and one sits only there. Guidance: legs and benches are not looked at.
 * Rules: HAND-4.
 */
export function seatsRound(lengthMm: number, widthMm: number, placeMm = PLACE_WIDTH_MM): Seats {
  const [long, short] = [Math.max(lengthMm, widthMm), Math.min(lengthMm, widthMm)]
  const alongEachSide = Math.floor(long / placeMm + 1e-9)
  // A setting at an end lies between those of the long sides' last places, unless these stop short of the corner.
  const cornerMm = (long - alongEachSide * placeMm) / 2
  const clearMm = cornerMm >= PLACE_DEPTH_MM ? short : short - 2 * Math.max(0, PLACE_DEPTH_MM - cornerMm)
  const atEachEnd = Math.max(short >= placeMm ? 1 : 0, Math.floor(clearMm / placeMm + 1e-9))
  return { alongEachSide, atEachEnd, total: 2 * (alongEachSide + atEachEnd) }
}
