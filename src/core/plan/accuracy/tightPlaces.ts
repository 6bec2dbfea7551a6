import {
  applyIsometry,
  type Bounds,
  type Isometry,
  isPointInRing,
  pointToRingDistanceMm,
  ringBounds,
  slabPoint,
  type SlabPoint,
  tablePoint,
  type TablePoint,
} from '../../geometry'
import { type TableSide, TABLE_SIDES } from '../../layout'
import { seededNormals, type SlabScale, thetaDraws, type ThetaGradient, thetaVariance } from '../../photo'
import { along } from './drawnAreas'
import type { EdgeStretch } from './edgeStretches'

/** A stretch of the slab's edge, seen from the finished table. */
export interface TightPlace {
  /** How far it stands outside the finished outline; negative: wood is short by so much. */
  readonly marginMm: number
  /** The side of the table it is nearest to. */
  readonly side: TableSide
  /** Whether a gap lies against it: a laid piece may fill what it leaves. */
  readonly isAtGap: boolean
  /** How the margin changes with each of θ. */
  readonly shift: ThetaGradient
  readonly traceSdMm: number
  /** Stretches of one run are traced with one error. */
  readonly run: number
}

/** Errors of a traced edge hang together over about a hand's breadth, mm: common practice, no source. */
const RUN_MM = 100
/** Places with so much more to spare than the tightest never decide, mm: above any ± of a photo that is of use. */
const REACH_MM = 150

/**
 * The places that may decide whether the slab covers the table.
 * @param edge the slab's outline; @param finished the finished outline, table frame; @param isAtGap whether a gap lies
 *   against a stretch
 */
export function tightPlaces(
  edge: readonly EdgeStretch[],
  toTable: Isometry,
  finished: readonly TablePoint[],
  isAtGap: (stretch: EdgeStretch) => boolean,
): readonly TightPlace[] {
  const bounds = ringBounds(finished)
  const inTable = (point: SlabPoint): TablePoint => applyIsometry(toTable, point, tablePoint)
  const marginAt = (point: SlabPoint): number => {
    const at = inTable(point)
    const distanceMm = pointToRingDistanceMm(at, finished)
    return isPointInRing(at, finished) ? -distanceMm : distanceMm
  }
  const margins = edge.map(({ middle }) => marginAt(middle))
  const mostMm = Math.max(Math.min(...margins), 0) + REACH_MM
  let alongMm = 0
  return edge.flatMap((stretch, n): readonly TightPlace[] => {
    const marginMm = margins[n] ?? mostMm
    alongMm += stretch.lengthMm
    if (marginMm >= mostMm) return []
    return [
      {
        marginMm,
        side: nearestSide(inTable(stretch.middle), bounds),
        isAtGap: isAtGap(stretch),
        shift: marginGradient(stretch, marginAt),
        traceSdMm: stretch.traceSdMm,
        run: Math.floor(alongMm / Math.max(RUN_MM, stretch.togetherMm)),
      },
    ]
  })
}

const STEP_MM = 0.1

/** A jagged edge moves as its points do, whichever way each of its stretches faces. */
function marginGradient(
  { middle: [x, y], moves }: EdgeStretch,
  marginAt: (point: SlabPoint) => number,
): ThetaGradient {
  const slope = (dx: number, dy: number): number =>
    (marginAt(slabPoint(x + dx, y + dy)) - marginAt(slabPoint(x - dx, y - dy))) / (2 * STEP_MM)
  const [perX, perY] = [slope(STEP_MM, 0), slope(0, STEP_MM)]
  return moves[0].map((value, k) => perX * value + perY * (moves[1][k] ?? 0))
}

function nearestSide([x, y]: TablePoint, { minX, minY, maxX, maxY }: Bounds): TableSide {
  const beyond: Record<TableSide, number> = {
    start: minX - x,
    end: x - maxX,
    far: minY - y,
    near: y - maxY,
  }
  return TABLE_SIDES.reduce((best, side) => (beyond[side] > beyond[best] ? side : best), 'start')
}

const DRAWS = 600
const SEED = 20_260_301
/** Beyond so many deviations a place no longer decides. */
const CERTAIN = 4

/**
 * The least margin over the places, drawn again and again: scale and trace as they may be.
 * @returns one least margin a draw, mm; none where the scale cannot be drawn from, or there are no places
 * Method: each place first order in θ; the least of many is not, and that is why it is drawn. Rules: PLN-10.
 */
export function drawnMargins(scale: SlabScale, places: readonly TightPlace[]): readonly number[] {
  if (places.length === 0) return []
  const normal = seededNormals(SEED)
  const deciding = mayDecide(scale, places)
  const runs = Math.max(...deciding.map(({ run }) => run)) + 1
  return thetaDraws(scale, DRAWS, normal).map((theta) => {
    const traced = Array.from({ length: runs }, normal)
    return deciding.reduce(
      (least, { marginMm, shift, traceSdMm, run }) =>
        Math.min(least, marginMm + traceSdMm * (traced[run] ?? 0) + along(shift, theta)),
      Number.POSITIVE_INFINITY,
    )
  })
}

/** The places that some draw may make the tightest. */
function mayDecide(scale: SlabScale, places: readonly TightPlace[]): readonly TightPlace[] {
  const sure = places.map((place) => ({
    place,
    sdMm: Math.hypot(Math.sqrt(thetaVariance(scale, place.shift)), place.traceSdMm),
  }))
  const worst = Math.min(...sure.map(({ place, sdMm }) => place.marginMm + CERTAIN * sdMm))
  return sure.filter(({ place, sdMm }) => place.marginMm - CERTAIN * sdMm < worst).map(({ place }) => place)
}
