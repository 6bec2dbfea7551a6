import {
  applyIsometry,
  applyIsometryToRegion,
  type Isometry,
  midpoint,
  type Point,
  type Region,
  regionBounds,
  ringBounds,
  slabPoint,
  tablePoint,
} from '../../core/geometry'
import { finishedRing } from '../../core/layout'
import type { Option, SlabPiece } from '../../core/plan'
import { readyValue } from '../readyValue'
import { footprintPoseOn } from './scene'
import type { PoseTarget, Scene } from './tools/toolTypes'

/** Something rigid that can be moved and turned, in the frame in which its pose lies. */
export interface PoseSubject {
  readonly pose: Isometry
  readonly body: Region
  readonly centre: Point
  /** Middle of one end, from which the turn handle stands off. */
  readonly grip: Point
  /** That frame's point under a world point, and back. */
  readonly frameOf: (world: Point) => Point | null
  readonly worldOf: (at: Point) => Point | null
}

type SubjectScene = Pick<Scene, 'option' | 'slab' | 'optionResult' | 'frames' | 'tray'>

/** Null when it does not lie in this view. */
export function poseSubject(scene: SubjectScene, target: PoseTarget): PoseSubject | null {
  switch (target.kind) {
    case 'footprint':
      return footprintSubject(scene)
    case 'placement':
      return placementSubject(scene, target.placementId)
    case 'tray': {
      const found = scene.tray.find(({ piece }) => piece.key === target.pieceKey)
      return found ? pieceSubject(scene, found.pose, found.piece) : null
    }
  }
}

/** Box of the finished table in its own frame. */
export const tableBox = (option: Option) => ringBounds(finishedRing(option.table.outline))

function footprintSubject(scene: SubjectScene): PoseSubject | null {
  const pose = footprintPoseOn(scene.option, scene.slab)
  if (!scene.option || !pose) return null
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid) return null
  const { minX, minY, maxX, maxY } = ringBounds(laid.finished)
  const [startPoint, endPoint] = [tablePoint(minX, (minY + maxY) / 2), tablePoint(maxX, (minY + maxY) / 2)]
  return {
    pose,
    body: { outer: laid.finishedOnSlab, holes: [] },
    centre: applyIsometry(pose, midpoint(startPoint, endPoint), slabPoint),
    grip: applyIsometry(pose, endPoint, slabPoint),
    frameOf: (world) => scene.frames.slabFromWorld(world),
    worldOf: ([x, y]) => scene.frames.worldFromSlab(slabPoint(x, y)),
  }
}

function placementSubject(scene: SubjectScene, placementId: string): PoseSubject | null {
  const placement = scene.option?.placements.find(({ id }) => id === placementId)
  const piece = placement && pieceById(scene, placement.pieceId)
  return placement && piece ? pieceSubject(scene, placement.pose, piece) : null
}

const pieceById = (scene: SubjectScene, pieceId: string): SlabPiece | null =>
  readyValue(scene.optionResult?.pieces)?.pieces.find((piece) => piece.pieceId === pieceId) ?? null

/** Centre and grip are those of the piece's box on the slab, so that they turn with it. */
function pieceSubject(scene: SubjectScene, pose: Isometry, { region }: SlabPiece): PoseSubject {
  const { minX, minY, maxX, maxY } = regionBounds(region)
  const middle: Point = [(minX + maxX) / 2, (minY + maxY) / 2]
  const end: Point = maxX - minX >= maxY - minY ? [maxX, middle[1]] : [middle[0], minY]
  return {
    pose,
    body: applyIsometryToRegion(pose, region, tablePoint),
    centre: applyIsometry(pose, middle, tablePoint),
    grip: applyIsometry(pose, end, tablePoint),
    frameOf: (world) => scene.frames.tableFromWorld(world),
    worldOf: ([x, y]) => scene.frames.worldFromTable(tablePoint(x, y)),
  }
}
