import { applyIsometryToRegion, type Isometry, regionsDistanceMm, tablePoint } from '../../../core/geometry'
import { readyValue } from '../../readyValue'
import type { ToolCommand } from './toolCommand'
import type { PoseTarget, Scene } from './toolTypes'

/**
 * The command that puts something rigid at a pose. A piece that lies wholly off the table goes (back) to the tray:
 * null for one that came from there.
 */
export function poseCommand(target: PoseTarget, pose: Isometry, scene: Scene): ToolCommand | null {
  const { option, slab } = scene
  if (!option || !slab) return null
  const optionId = option.id
  switch (target.kind) {
    case 'footprint':
      return { name: 'layFootprint', args: { optionId, slabId: slab.id, pose } }
    case 'placement': {
      const { placementId } = target
      const pieceId = option.placements.find(({ id }) => id === placementId)?.pieceId
      return isOnTable(scene, (piece) => piece.pieceId === pieceId, pose)
        ? { name: 'movePlacement', args: { optionId, placementId, pose } }
        : { name: 'removePlacement', args: { optionId, placementId } }
    }
    case 'tray':
      return layPieceCommand(target, pose, scene)
  }
}

function layPieceCommand(
  target: Extract<PoseTarget, { kind: 'tray' }>,
  pose: Isometry,
  scene: Scene,
): ToolCommand | null {
  const { option, slab } = scene
  const piece = scene.tray.find((other) => other.piece.key === target.pieceKey)?.piece
  if (!option || !slab || !piece) return null
  if (!isOnTable(scene, ({ key }) => key === piece.key, pose)) return null
  return {
    name: 'layPiece',
    args: {
      optionId: option.id,
      slabId: slab.id,
      piece: { id: piece.pieceId ?? target.pieceId, name: piece.name, anchor: piece.anchor },
      placementId: target.placementId,
      pose,
    },
  }
}

type PieceTest = (piece: { readonly key: string; readonly pieceId: string | null }) => boolean

function isOnTable(scene: Scene, isPiece: PieceTest, pose: Isometry): boolean {
  const piece = readyValue(scene.optionResult?.pieces)?.pieces.find(isPiece)
  const blank = readyValue(scene.optionResult?.footprint)?.blank
  if (!piece || !blank) return true
  const body = applyIsometryToRegion(pose, piece.region, tablePoint)
  return regionsDistanceMm([body], [{ outer: blank, holes: [] }]) === 0
}
