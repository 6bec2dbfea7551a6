import {
  applyIsometryToRegion,
  type Bounds,
  invertIsometry,
  type Isometry,
  regionBounds,
  ringBounds,
  type Ring,
  tablePoint,
  type TablePoint,
} from '../../core/geometry'
import type { SlabPiece } from '../../core/plan'
import { movedPose, turnedPose } from './poseEdits'
import type { TrayPiece } from './tools/toolTypes'

/** Free space between the table and the tray, and between pieces, as a share of the table's longer side. */
const SPACE_SHARE = 0.05
/** Narrower scraps are left out: nobody can lay them. Common practice, no source. */
const LEAST_PIECE_MM = 12

/**
 * The offcuts in rows under the table, true to scale, turned as they lie on the slab or a quarter further.
 * @param pieces        all pieces of the slab; those that are neither the table nor laid go into the tray
 * @param footprintPose table frame in the slab frame
 */
export function layTray(
  pieces: readonly SlabPiece[],
  blank: Ring<TablePoint>,
  footprintPose: Isometry,
): readonly TrayPiece[] {
  const table = ringBounds(blank)
  const space = SPACE_SHARE * Math.max(table.maxX - table.minX, table.maxY - table.minY)
  const asOnSlab = invertIsometry(footprintPose)
  const row = { x: table.minX, y: table.maxY + 2 * space, height: 0 }
  return offcutsBySize(pieces).map((piece) => {
    const lying = lyingPose(piece, asOnSlab)
    const bounds = boundsAt(lying, piece)
    const width = bounds.maxX - bounds.minX
    if (row.x > table.minX && row.x + width > table.maxX) {
      row.x = table.minX
      row.y += row.height + space
      row.height = 0
    }
    const pose = movedPose(lying, row.x - bounds.minX, row.y - bounds.minY)
    row.x += width + space
    row.height = Math.max(row.height, bounds.maxY - bounds.minY)
    return { piece, pose, region: applyIsometryToRegion(pose, piece.region, tablePoint) }
  })
}

const boundsAt = (pose: Isometry, { region }: SlabPiece): Bounds =>
  regionBounds(applyIsometryToRegion(pose, region, tablePoint))

/** Pieces that stand are laid on their side: the tray stays low. */
function lyingPose(piece: SlabPiece, asOnSlab: Isometry): Isometry {
  const { minX, minY, maxX, maxY } = boundsAt(asOnSlab, piece)
  return maxY - minY > maxX - minX ? turnedPose(asOnSlab, [minX, minY], Math.PI / 2) : asOnSlab
}

const offcutsBySize = (pieces: readonly SlabPiece[]): readonly SlabPiece[] =>
  pieces
    .filter((piece) => piece.use === 'offcut' && leastSide(regionBounds(piece.region)) >= LEAST_PIECE_MM)
    .sort((a, b) => b.areaMm2 - a.areaMm2)

const leastSide = ({ minX, minY, maxX, maxY }: Bounds): number => Math.min(maxX - minX, maxY - minY)
