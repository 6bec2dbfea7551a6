import {
  intersectRegions,
  offsetRegions,
  type Region,
  regionsAreaMm2,
  type Ring,
  ringBounds,
  type SlabPoint,
  subtractRegions,
  type TablePoint,
  tablePoint,
} from '../../geometry'
import { ok, problem, type Result } from '../../units'

/** An offcut that may be laid into the table. */
export interface FillOffcut {
  /** The caller's own word for it, given back with every piece that is cut from it. */
  readonly key: string
  readonly region: Region<SlabPoint>
  /** Direction of its grain in its slab's frame. */
  readonly grainRad: number
}

export interface FillLimits {
  /** Least width of resin between wood and wood, mm. */
  readonly leastJointMm: number
  /** No laid piece is narrower than this between two of its stations, mm. */
  readonly leastWidthMm: number
  readonly leastLengthMm: number
  /** A piece must bring so much more wood than nothing to be worth its cuts and its fitting, mm². */
  readonly costPerPieceMm2: number
  readonly kerfMm: number
  readonly mayTurnOver: boolean
  /** The grain may run so far off the table's; null: any way. */
  readonly grainWithinRad: number | null
}

/** Common practice, no source: what a maker would begin with. */
export const FILL_LIMITS: FillLimits = {
  leastJointMm: 8,
  leastWidthMm: 12,
  leastLengthMm: 80,
  costPerPieceMm2: 2500,
  kerfMm: 3,
  mayTurnOver: true,
  grainWithinRad: (25 * Math.PI) / 180,
}

/** Which gaps to fill, with what, and within what limits. Plain values: it goes to a worker as it is. */
export interface FillTask {
  /** The blank's rectangle in the table frame, upright. */
  readonly blank: Ring<TablePoint>
  /** Wood in the blank that stays where it is: the slab's own and pieces that are fixed. */
  readonly wood: readonly Region<TablePoint>[]
  /** Places that are no gap to fill: air beyond a kept edge, holes that do not go through. Wood keeps off them. */
  readonly closed: readonly Region<TablePoint>[]
  readonly offcuts: readonly FillOffcut[]
  /** Direction of the grain of the wood in the table, in the table frame. */
  readonly tableGrainRad: number
  readonly limits: FillLimits
  /** The same seed takes the same steps. */
  readonly seed: number
}

/** What there is to fill, mm². */
export interface FillRoom {
  /** Gaps to be filled. */
  readonly voidMm2: number
  /** Of it, what lies the least joint off all wood: no piece can cover more. */
  readonly clearMm2: number
  readonly offcutMm2: number
  /** Nothing can fill more than this: the lesser of the two. */
  readonly reachableMm2: number
}

/** Less room than this is not worth a search, mm². */
const LEAST_ROOM_MM2 = 400

/**
 * How much there is to fill, and the most that any pieces could.
 * @returns 'fill-no-offcuts' without offcuts, 'fill-no-gap' where nothing is open or all of it is narrower than the joints
 * Rules: LAY-22.
 */
export function fillRoom(task: FillTask): Result<FillRoom> {
  const offcutMm2 = regionsAreaMm2(task.offcuts.map(({ region }) => region))
  if (!(offcutMm2 > 0)) return problem('fill-no-offcuts', {})
  const blank: Region<TablePoint> = { outer: task.blank, holes: [] }
  const open = subtractRegions([blank], [...task.wood, ...task.closed])
  const { leastJointMm } = task.limits
  const kept = intersectRegions([...task.wood, ...task.closed], [grownBox(task.blank, 2 * leastJointMm + 1)])
  const grown = leastJointMm > 0 && kept.length > 0 ? offsetRegions(kept, leastJointMm, 'round') : kept
  const clearMm2 = regionsAreaMm2(subtractRegions([blank], grown))
  if (clearMm2 < LEAST_ROOM_MM2) return problem('fill-no-gap', {})
  return ok({
    voidMm2: regionsAreaMm2(open),
    clearMm2,
    offcutMm2,
    reachableMm2: Math.min(clearMm2, offcutMm2),
  })
}

function grownBox(blank: Ring<TablePoint>, byMm: number): Region<TablePoint> {
  const { minX, minY, maxX, maxY } = ringBounds(blank)
  const corner = tablePoint
  return {
    outer: [
      corner(minX - byMm, minY - byMm),
      corner(maxX + byMm, minY - byMm),
      corner(maxX + byMm, maxY + byMm),
      corner(minX - byMm, maxY + byMm),
    ],
    holes: [],
  }
}
