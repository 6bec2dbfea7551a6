import { type Point, pointToSegmentDistanceMm, type SlabPoint } from '../../core/geometry'
import type { Selection } from '../../state/sessionStore'
import { worldPath } from './frames'
import { datumOn, handlesOf, isWorthNaming, tracesOf } from './handles'
import { HIT_RADIUS_PX, hitEdge, hitHandle, isInRegions } from './hitTest'
import { poseSubject } from './poseSubject'
import { readyValue } from '../readyValue'
import type { PointerKind, PoseTarget, Scene } from './tools/toolTypes'
import { screenOf, worldOf } from './view'

/** What a tap at a screen point selects: a handle, a line, or the body it falls on; null for none. */
export function selectionAt(scene: Scene, screen: Point, pointer: PointerKind): Selection | null {
  const handle = hitHandle(handlesOf(scene), screen, pointer, ({ selection }) => selection !== null)
  if (handle) return handle.selection
  const lines = [cutAt, traceAt, datumAt]
  for (const lineAt of lines) {
    const found = lineAt(scene, screen, HIT_RADIUS_PX[pointer])
    if (found) return found
  }
  return (
    placementAt(scene, screen) ??
    trayPieceAt(scene, screen) ??
    footprintAt(scene, screen) ??
    pieceAt(scene, screen)
  )
}

function cutAt(scene: Scene, screen: Point, reachPx: number): Selection | null {
  const pieces = readyValue(scene.optionResult?.pieces)
  if (!pieces || pieces.slabId !== scene.slab?.id || scene.view === 'table') return null
  const found = pieces.cuts.find((cut) => isOnLine(scene, [cut.from.at, cut.to.at], screen, reachPx / 2))
  return found ? { kind: 'cut', cutId: found.cutId } : null
}

function isOnLine(
  { frames, camera }: Scene,
  line: readonly [SlabPoint, SlabPoint],
  screen: Point,
  reachPx: number,
): boolean {
  const path = worldPath(line, frames.worldFromSlab)
  const [from, to] = path?.map((point) => screenOf(camera, point)) ?? []
  return from !== undefined && to !== undefined && pointToSegmentDistanceMm(screen, from, to) <= reachPx
}

/** The edge of a trace under a screen point, nearest in the list first. */
export function traceEdgeAt(
  scene: Scene,
  screen: Point,
  reachPx: number,
): { readonly traceId: string; readonly edge: number } | null {
  if (scene.view !== 'photo') return null
  for (const trace of tracesOf(scene)) {
    const path = trace.ringPx.map((point) => screenOf(scene.camera, point))
    const edge = hitEdge(path, screen, reachPx)
    if (edge !== null) return { traceId: trace.id, edge }
  }
  return null
}

function traceAt(scene: Scene, screen: Point, reachPx: number): Selection | null {
  const hit = traceEdgeAt(scene, screen, reachPx)
  return hit && { kind: 'trace', traceId: hit.traceId, point: null }
}

function datumAt(scene: Scene, screen: Point, reachPx: number): Selection | null {
  const datum = datumOn(scene)
  if (!datum || scene.view !== 'photo') return null
  const near = pointToSegmentDistanceMm(
    screen,
    screenOf(scene.camera, datum.fromPx),
    screenOf(scene.camera, datum.toPx),
  )
  return near <= reachPx / 2 ? { kind: 'datum', end: null } : null
}

/** Is the screen point on the body of something rigid? */
function isOnBody(scene: Scene, target: PoseTarget, screen: Point): boolean {
  const subject = poseSubject(scene, target)
  const at = subject?.frameOf(worldOf(scene.camera, screen))
  return subject !== null && !!at && isInRegions([subject.body], at)
}

function footprintAt(scene: Scene, screen: Point): Selection | null {
  if (!scene.option || scene.view === 'table' || !isOnBody(scene, { kind: 'footprint' }, screen)) return null
  return { kind: 'footprint' }
}

function placementAt(scene: Scene, screen: Point): Selection | null {
  const { option } = scene
  if (!option || scene.view !== 'table') return null
  const found = option.placements.findLast(({ id }) =>
    isOnBody(scene, { kind: 'placement', placementId: id }, screen),
  )
  return found ? { kind: 'placement', placementId: found.id } : null
}

/** The piece of the tray under a screen point. */
export function trayKeyAt(scene: Scene, screen: Point): string | null {
  const at = worldOf(scene.camera, screen)
  return scene.tray.find(({ region }) => isInRegions([region], at))?.piece.key ?? null
}

function trayPieceAt(scene: Scene, screen: Point): Selection | null {
  const key = scene.view === 'table' ? trayKeyAt(scene, screen) : null
  return key === null ? null : { kind: 'piece', key }
}

function pieceAt(scene: Scene, screen: Point): Selection | null {
  const pieces = readyValue(scene.optionResult?.pieces)
  const at = scene.frames.slabFromWorld(worldOf(scene.camera, screen))
  if (!scene.option || !pieces || !at || scene.view === 'table' || pieces.slabId !== scene.slab?.id)
    return null
  const found = pieces.pieces.find((piece) => isWorthNaming(piece) && isInRegions([piece.region], at))
  return found ? { kind: 'piece', key: found.key } : null
}
