import type { Ring, SlabPoint } from '../../../core/geometry'
import type { Trace } from '../../../core/plan'
import type { Ink } from '../ink'
import { datumOn, tracesOf } from '../handles'
import { readyValue } from '../../readyValue'
import type { Scene } from '../tools/toolTypes'
import { screenOf } from '../view'
import { slabRingPath, type WorldPath } from '../worldPaths'
import { type Brush, fill, hatch, layPaths, stroke } from './paint'

/** The slab itself: outline, voids, datum line, boards that lie on it. */
export function paintSlab(brush: Brush, scene: Scene, ink: Ink): void {
  if (scene.view === 'table') return
  if (scene.view === 'photo') paintTraces(brush, scene, ink)
  else paintShape(brush, scene, ink)
  paintBoards(brush, scene, ink)
  paintRules(brush, scene, ink)
  paintLines(brush, scene, ink)
  paintDatum(brush, scene, ink)
}

/** In the photo: the traces as they were drawn. */
function paintTraces(brush: Brush, scene: Scene, ink: Ink): void {
  for (const trace of tracesOf(scene)) {
    const { kind } = trace.meaning
    if (TAKEN_OUT.has(kind)) hatch(brush, scene.camera, [trace.ringPx], 'void', ink.ink)
    layPaths(brush, scene.camera, [trace.ringPx], true)
    outlineStroke(brush, ink, isSelected(scene, trace), PLACE_DASHES_PX[kind])
  }
  paintCleaned(brush, scene, ink)
}

/** What is no wood. */
const TAKEN_OUT: ReadonlySet<Trace['meaning']['kind']> = new Set(['void', 'crack', 'bark'])
/** Places that stay wood are told apart by their dashes. */
const PLACE_DASHES_PX: { readonly [Kind in Trace['meaning']['kind']]?: readonly number[] } = {
  defect: [3, 4],
  figure: [12, 4],
}

/** The line that is left once decayed wood is cut back; in the photo beside the one that was traced. */
function paintCleaned(brush: Brush, scene: Scene, ink: Ink): void {
  const shape = readyValue(scene.slabResult?.shape)
  if (!shape || shape.outline === shape.tracedOutline) return
  if (!laidRing(brush, scene, shape.outline)) return
  stroke(brush, { colour: ink.ink, widthPx: 1.5 * ink.weight, dashPx: [8, 3, 2, 3], halo: ink.paper })
}

const isSelected = ({ selection }: Scene, trace: Trace): boolean =>
  selection?.kind === 'trace' && selection.traceId === trace.id

function outlineStroke(brush: Brush, ink: Ink, selected: boolean, dashPx: readonly number[] = []): void {
  const widthPx = (selected ? 3 : 2) * ink.weight
  stroke(brush, { colour: selected ? ink.accent : ink.ink, widthPx, dashPx, halo: ink.paper })
}

/** From above: the shape that the core made of the traces. */
function paintShape(brush: Brush, scene: Scene, ink: Ink): void {
  const shape = readyValue(scene.slabResult?.shape)
  if (!shape) return
  const { selection } = scene
  const isTrace = (traceId: string): boolean => selection?.kind === 'trace' && selection.traceId === traceId
  for (const { ring, traceId } of shape.voids) paintVoid(brush, scene, ink, ring, isTrace(traceId))
  for (const { ring, traceId, kind } of shape.places) {
    if (laidRing(brush, scene, ring)) outlineStroke(brush, ink, isTrace(traceId), PLACE_DASHES_PX[kind])
  }
  if (shape.tracedOutline !== shape.outline && laidRing(brush, scene, shape.tracedOutline)) {
    stroke(brush, { colour: ink.inkSoft, widthPx: ink.weight, dashPx: [2, 4], halo: ink.paper })
  }
  if (!laidRing(brush, scene, shape.outline)) return
  const trace = tracesOf(scene).find(({ meaning }) => meaning.kind === 'outline')
  outlineStroke(brush, ink, trace !== undefined && isTrace(trace.id))
}

function paintVoid(brush: Brush, scene: Scene, ink: Ink, ring: Ring<SlabPoint>, selected: boolean): void {
  const path = slabRingPath(scene.frames, ring)
  if (!path) return
  layPaths(brush, scene.camera, [path], true)
  fill(brush, ink.paper, 0.55)
  hatch(brush, scene.camera, [path], 'void', ink.ink)
  layPaths(brush, scene.camera, [path], true)
  outlineStroke(brush, ink, selected)
}

/** Lays down a ring of the slab. @returns false when part of it lies beyond the horizon */
function laidRing(brush: Brush, { frames, camera }: Scene, ring: Ring<SlabPoint>): boolean {
  const path = slabRingPath(frames, ring)
  if (path) layPaths(brush, camera, [path], true)
  return path !== null
}

function paintBoards(brush: Brush, scene: Scene, ink: Ink): void {
  const { slab, photo, frames, camera, selection } = scene
  for (const board of slab?.boards ?? []) {
    const corners = board.cornerIds
      .map((id) => photo?.observations.find(({ markId }) => markId === id)?.atPx)
      .map((atPx) => (atPx ? frames.worldFromPx(atPx) : null))
      .filter((point) => point !== null)
    if (corners.length !== board.cornerIds.length) continue
    layPaths(brush, camera, [corners], true)
    const selected = selection?.kind === 'board' && selection.boardId === board.id
    stroke(brush, {
      colour: selected ? ink.accent : ink.ink,
      widthPx: (selected ? 2.5 : 1.5) * ink.weight,
      dashPx: [3, 4],
      halo: ink.paper,
    })
  }
}

function paintRules(brush: Brush, scene: Scene, ink: Ink): void {
  const { slab, photo, frames, camera, selection } = scene
  for (const rule of slab?.rules ?? []) {
    const ends = rule.endIds
      .map((id) => photo?.observations.find(({ markId }) => markId === id)?.atPx)
      .map((atPx) => (atPx ? frames.worldFromPx(atPx) : null))
      .filter((point) => point !== null)
    if (ends.length !== 2) continue
    layPaths(brush, camera, [ends], false)
    const selected = selection?.kind === 'rule' && selection.ruleId === rule.id
    stroke(brush, {
      colour: selected ? ink.accent : ink.ink,
      widthPx: (selected ? 2.5 : 1.5) * ink.weight,
      dashPx: [3, 4],
      halo: ink.paper,
    })
  }
}

/** Straight lines that tell the lens's bow, through their points; a small cross at each. */
function paintLines(brush: Brush, { photo, frames, camera, selection }: Scene, ink: Ink): void {
  for (const line of photo?.straightLines ?? []) {
    const path = line.pointsPx.map((px) => frames.worldFromPx(px)).filter((point) => point !== null)
    const selected = selection?.kind === 'line' && selection.lineId === line.id
    const colour = selected ? ink.accent : ink.ink
    layPaths(brush, camera, [path], false)
    stroke(brush, { colour, widthPx: (selected ? 2.25 : 1.25) * ink.weight, dashPx: [9, 5], halo: ink.paper })
    brush.beginPath()
    for (const [x, y] of path.map((point) => screenOf(camera, point))) {
      brush.moveTo(x - 4, y - 4)
      brush.lineTo(x + 4, y + 4)
      brush.moveTo(x + 4, y - 4)
      brush.lineTo(x - 4, y + 4)
    }
    stroke(brush, { colour, widthPx: 1.5 * ink.weight, halo: ink.paper })
  }
}

/** A long and two short dashes: a line to measure from. */
const DATUM_DASH = [16, 4, 3, 4] as const

/** Both ends of the datum in the view's world; null while there is none, or it does not lie in this view. */
export function datumPath(scene: Scene): WorldPath | null {
  const { frames } = scene
  const datum = datumOn(scene)
  const from = datum && frames.worldFromPx(datum.fromPx)
  const to = datum && frames.worldFromPx(datum.toPx)
  return from && to ? [from, to] : null
}

function paintDatum(brush: Brush, scene: Scene, ink: Ink): void {
  const path = datumPath(scene)
  if (!path) return
  layPaths(brush, scene.camera, [path], false)
  const selected = scene.selection?.kind === 'datum' || scene.tool === 'datum'
  stroke(brush, {
    colour: ink.accent,
    widthPx: (selected ? 2.25 : 1.25) * ink.weight,
    dashPx: DATUM_DASH,
    halo: ink.paper,
  })
  for (const end of path) {
    const [x, y] = screenOf(scene.camera, end)
    brush.beginPath()
    brush.moveTo(x, y - 6)
    brush.lineTo(x + 6, y)
    brush.lineTo(x, y + 6)
    brush.lineTo(x - 6, y)
    brush.closePath()
    fill(brush, ink.paper, 0.9)
    stroke(brush, { colour: ink.accent, widthPx: 1.5 * ink.weight })
  }
}
