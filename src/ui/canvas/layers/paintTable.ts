import { applyIsometry, invertIsometry, type Isometry, type Point, type Region } from '../../../core/geometry'
import { tablePoint, type TablePoint } from '../../../core/geometry'
import type { PlacedPiece } from '../../../core/plan'
import type { Ink } from '../ink'
import type { Picture, Pictures } from '../photo/pictureStore'
import { readyValue } from '../../readyValue'
import { footprintPoseOn } from '../scene'
import type { Scene } from '../tools/toolTypes'
import { type Camera, screenOf } from '../view'
import { regionPaths, tableRingPath } from '../worldPaths'
import { type Brush, fill, hatch, layPaths, stroke } from './paint'
import { BLANK_DASH } from './paintOption'

/** What lies still in the view of the table: the blank and the main wood. */
export function paintTableGround(brush: Brush, scene: Scene, ink: Ink, { above }: Pictures): void {
  const laid = readyValue(scene.optionResult?.footprint)
  const pose = footprintPoseOn(scene.option, scene.slab)
  if (scene.view !== 'table' || !laid || !pose) return
  layPaths(brush, scene.camera, [laid.blank], true)
  fill(brush, ink.paper, 1)
  const wood = readyValue(scene.optionResult?.coverage)?.mainWood ?? []
  paintWood(brush, scene, ink, { region: wood, pose: invertIsometry(pose), picture: above, isFaint: false })
}

/** What changes while a piece is moved: tray, gaps, pieces, and the two outlines over them. */
export function paintTableFill(brush: Brush, scene: Scene, ink: Ink, { above }: Pictures): void {
  const { frames, camera } = scene
  const coverage = readyValue(scene.optionResult?.coverage)
  if (scene.view !== 'table' || !coverage) return
  paintTray(brush, scene, ink, above)
  for (const gap of coverage.gaps) {
    const paths = regionPaths(frames, [gap.region], tableRingPath)
    hatch(brush, camera, paths, 'resin', ink.accent)
    layPaths(brush, camera, paths, true)
    stroke(brush, { colour: ink.accent, widthPx: ink.weight })
  }
  for (const placed of coverage.placed) paintPlaced(brush, scene, ink, placed, above)
  paintOutlines(brush, scene, ink)
}

function paintPlaced(
  brush: Brush,
  scene: Scene,
  ink: Ink,
  { placementId, whole, inBlank }: PlacedPiece,
  picture: Picture | null,
): void {
  const pose = scene.option?.placements.find(({ id }) => id === placementId)?.pose
  if (!pose) return
  paintWood(brush, scene, ink, { region: [whole], pose, picture, isFaint: true })
  paintWood(brush, scene, ink, { region: inBlank, pose, picture, isFaint: pose.turnedOver })
  const selected = scene.selection?.kind === 'placement' && scene.selection.placementId === placementId
  layPaths(brush, scene.camera, regionPaths(scene.frames, [whole], tableRingPath), true)
  stroke(brush, {
    colour: selected ? ink.accent : ink.ink,
    widthPx: (selected ? 3 : 1.25) * ink.weight,
    dashPx: selected ? [] : [4, 3],
  })
}

function paintTray(brush: Brush, scene: Scene, ink: Ink, picture: Picture | null): void {
  for (const { piece, pose, region } of scene.tray) {
    paintWood(brush, scene, ink, { region: [region], pose, picture, isFaint: false })
    layPaths(brush, scene.camera, regionPaths(scene.frames, [region], tableRingPath), true)
    const selected = scene.selection?.kind === 'piece' && scene.selection.key === piece.key
    stroke(brush, { colour: selected ? ink.accent : ink.ink, widthPx: (selected ? 3 : 1.25) * ink.weight })
  }
}

function paintOutlines(brush: Brush, scene: Scene, ink: Ink): void {
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid) return
  layPaths(brush, scene.camera, [laid.blank], true)
  stroke(brush, { colour: ink.accent, widthPx: 1.25 * ink.weight, dashPx: BLANK_DASH, halo: ink.paper })
  layPaths(brush, scene.camera, [laid.finished], true)
  stroke(brush, { colour: ink.accent, widthPx: 2.25 * ink.weight, halo: ink.paper })
}

interface Wood {
  readonly region: readonly Region<TablePoint>[]
  /** Of the slab frame in the table frame. */
  readonly pose: Isometry
  readonly picture: Picture | null
  /** What is sawn off, and undersides, of which there is no photo. */
  readonly isFaint: boolean
}

/** Wood with its grain, cut out of the picture of the slab; plain until there is one. */
function paintWood(brush: Brush, scene: Scene, ink: Ink, { region, pose, picture, isFaint }: Wood): void {
  layPaths(brush, scene.camera, regionPaths(scene.frames, region, tableRingPath), true)
  fill(brush, ink.ground, 1)
  if (picture) {
    brush.save()
    brush.clip('evenodd')
    brush.globalAlpha = isFaint ? 0.45 : 1
    placeOnScreen(brush, scene.camera, pose)
    const { minX, minY, maxX, maxY } = picture.area
    brush.drawImage(picture.bitmap, minX, minY, maxX - minX, maxY - minY)
    brush.restore()
  }
  stroke(brush, { colour: ink.ink, widthPx: 1.5 * ink.weight })
}

/** From here on the brush draws in the slab's millimetres, placed by the pose. */
function placeOnScreen(brush: Brush, camera: Camera, pose: Isometry): void {
  const at = (x: number, y: number): Point => screenOf(camera, applyIsometry(pose, [x, y], tablePoint))
  const [origin, along, across] = [at(0, 0), at(1, 0), at(0, 1)]
  brush.transform(
    along[0] - origin[0],
    along[1] - origin[1],
    across[0] - origin[0],
    across[1] - origin[1],
    origin[0],
    origin[1],
  )
}
