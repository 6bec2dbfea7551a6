import {
  applyIsometry,
  applyIsometryToRegion,
  intersectRegions,
  type Isometry,
  type Point,
  type Region,
  regionsAreaMm2,
  ringMoments,
  type SlabPoint,
  tablePoint,
  type TablePoint,
} from '../geometry'

/**
 * A first place for an offcut: over a gap's middle, along it, whichever way round fills more of it. Never turned over:
 * the maker decides which face shows.
 * @param piece in the slab frame, mm
 * @param gap   in the table frame, mm
 * @returns pose of the slab frame in the table frame
 * Method: principal axes of the two outlines laid on each other, both ways round compared by the area in the gap.
 * Rules: LAY-9.
 */
export function startingPlacement(piece: Region<SlabPoint>, gap: Region<TablePoint>): Isometry {
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
