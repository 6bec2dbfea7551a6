import {
  applyIsometry,
  applyIsometryToRegion,
  intersectRegions,
  offsetRegions,
  type Isometry,
  type Point,
  type Region,
  regionAreaMm2,
  regionBounds,
  regionsAreaMm2,
  ringMoments,
  type SlabPoint,
  tablePoint,
  type TablePoint,
} from '../geometry'

/** The wood that is there already, and the least joint to it. */
export interface WoodAbout {
  readonly wood: readonly Region<TablePoint>[]
  readonly leastJointMm: number
}

/**
 * A first place for an offcut: over a gap's middle, along it, whichever way round fills more of it, then moved outwards
 * until it lies on no other wood and keeps the joint. Never turned over: the maker decides which face shows.
 * @param piece in the slab frame, mm
 * @param gap   in the table frame, mm
 * @returns pose of the slab frame in the table frame; over the gap's middle where moving outwards frees it from nothing
 * Method: principal axes of the two outlines laid on each other, both ways round compared by the area in the gap; the
 * shortest move square to the gap by bisection.
 * Rules: LAY-9.
 */
export function startingPlacement(
  piece: Region<SlabPoint>,
  gap: Region<TablePoint>,
  about: WoodAbout = { wood: [], leastJointMm: 0 },
): Isometry {
  return clearOfWood(piece, gap, overTheGap(piece, gap), about)
}

/** Wood on wood below this is a touch, mm². */
const TOUCH_MM2 = 1
/** Halvings of the way: a tenth of a millimetre over any table. */
const HALVINGS = 16

function clearOfWood(
  piece: Region<SlabPoint>,
  gap: Region<TablePoint>,
  pose: Isometry,
  { wood, leastJointMm }: WoodAbout,
): Isometry {
  const grown = offsetRegions(wood, leastJointMm, 'round')
  const moved = outwards(gap, wood, pose)
  const isClear = (byMm: number): boolean =>
    regionsAreaMm2(intersectRegions([applyIsometryToRegion(moved(byMm), piece, tablePoint)], grown)) <
    TOUCH_MM2
  if (isClear(0)) return pose
  const { minX, minY, maxX, maxY } = regionBounds(piece)
  let [near, far] = [0, Math.hypot(maxX - minX, maxY - minY)]
  if (!isClear(far)) return pose
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (near + far) / 2
    if (isClear(middle)) far = middle
    else near = middle
  }
  return moved(far)
}

/** Moves of a pose square to the gap's length, away from the wood. */
function outwards(
  gap: Region<TablePoint>,
  wood: readonly Region<TablePoint>[],
  pose: Isometry,
): (byMm: number) => Isometry {
  const { middle, angleRad } = middleAndDirection(gap.outer)
  const largest = wood.reduce<Region<TablePoint> | undefined>(
    (one, other) => (one === undefined || regionAreaMm2(other) > regionAreaMm2(one) ? other : one),
    undefined,
  )
  const from = largest === undefined ? middle : ringMoments(largest.outer).centroid
  const square: Point = [-Math.sin(angleRad), Math.cos(angleRad)]
  const sign = Math.sign(square[0] * (middle[0] - from[0]) + square[1] * (middle[1] - from[1]))
  return (byMm) => ({
    ...pose,
    xMm: pose.xMm + sign * byMm * square[0],
    yMm: pose.yMm + sign * byMm * square[1],
  })
}

function overTheGap(piece: Region<SlabPoint>, gap: Region<TablePoint>): Isometry {
  const from = middleAndDirection(piece.outer)
  const to = middleAndDirection(gap.outer)
  const along = to.angleRad - from.angleRad
  const [first, second] = [along, along + Math.PI].map((angleRad) =>
    poseAbout(from.middle, to.middle, angleRad),
  )
  if (first === undefined || second === undefined) return poseAbout(from.middle, to.middle, along)
  return filledAreaMm2(piece, gap, second) > filledAreaMm2(piece, gap, first) ? second : first
}

function middleAndDirection(ring: readonly Point[]): { readonly middle: Point; readonly angleRad: number } {
  const { centroid, aboutXMm4, aboutYMm4, productMm4 } = ringMoments(ring)
  // The axis of least moment: tan 2θ = 2·Ixy / (∫x² − ∫y²).
  return { middle: centroid, angleRad: 0.5 * Math.atan2(2 * productMm4, aboutYMm4 - aboutXMm4) }
}

function poseAbout(from: Point, to: Point, angleRad: number): Isometry {
  const turn: Isometry = { xMm: 0, yMm: 0, angleRad, turnedOver: false }
  const turned = applyIsometry(turn, from, tablePoint)
  return { ...turn, xMm: to[0] - turned[0], yMm: to[1] - turned[1] }
}

const filledAreaMm2 = (piece: Region<SlabPoint>, gap: Region<TablePoint>, pose: Isometry): number =>
  regionsAreaMm2(intersectRegions([applyIsometryToRegion(pose, piece, tablePoint)], [gap]))
