import type { Point, PxPoint } from '../../../core/geometry'
import type { Crosshair } from '../canvasStore'
import { handlesOf } from '../handles'
import type { Ink } from '../ink'
import { sameData } from '../../../state/sameData'
import type { Aim, Handle, Scene } from '../tools/toolTypes'
import { screenOf } from '../view'
import { type Brush, disc, fill, layPaths, stroke } from './paint'

export interface Hands {
  readonly unfinished: readonly PxPoint[]
  readonly aim: Aim | null
  readonly crosshair: Crosshair | null
}

/** Handles, what is being drawn, and the cross. */
export function paintHands(brush: Brush, scene: Scene, ink: Ink, hands: Hands): void {
  for (const handle of handlesOf(scene)) paintHandle(brush, handle, scene, ink)
  paintUnfinished(brush, scene, ink, hands)
  const at = hands.aim?.world ?? hands.crosshair?.world
  if (at) paintCross(brush, screenOf(scene.camera, at), ink)
}

function paintHandle(brush: Brush, handle: Handle, scene: Scene, ink: Ink): void {
  if (handle.kind === 'tracePoint') {
    paintPoint(brush, handle.screen, sameData(handle.selection, scene.selection), ink)
  }
  if (handle.kind === 'turnHandle') paintTurnHandle(brush, handle, scene, ink)
}

function paintPoint(brush: Brush, [x, y]: Point, selected: boolean, ink: Ink): void {
  const half = selected ? 6 : 4
  brush.beginPath()
  brush.rect(x - half, y - half, 2 * half, 2 * half)
  fill(brush, selected ? ink.accent : ink.paper, 1)
  stroke(brush, { colour: selected ? ink.paper : ink.ink, widthPx: 1.5 * ink.weight })
}

/** A disc on a stalk, with a bent arrow. */
function paintTurnHandle(brush: Brush, { screen, world }: Handle, scene: Scene, ink: Ink): void {
  const [x, y] = screen
  const foot = screenOf(scene.camera, world)
  brush.beginPath()
  brush.moveTo(foot[0], foot[1])
  brush.lineTo(x, y)
  stroke(brush, { colour: ink.accent, widthPx: 1.5 * ink.weight, halo: ink.paper })
  disc(brush, screen, 12)
  fill(brush, ink.paper, 1)
  stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight })
  brush.beginPath()
  brush.arc(x, y, 5.5, -2.6, 1.4)
  stroke(brush, { colour: ink.accent, widthPx: 1.75 * ink.weight })
  brush.beginPath()
  brush.moveTo(x - 3, y + 2.5)
  brush.lineTo(x + 1, y + 5.5)
  brush.lineTo(x - 2.5, y + 8.5)
  stroke(brush, { colour: ink.accent, widthPx: 1.75 * ink.weight })
}

/** Points set so far, with a thin line on to the aim, and a ring round the first one where a tap closes. */
function paintUnfinished(brush: Brush, scene: Scene, ink: Ink, { unfinished, aim, crosshair }: Hands): void {
  if (unfinished.length === 0 || scene.view !== 'photo') return
  layPaths(brush, scene.camera, [unfinished], false)
  stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
  const [first] = unfinished
  const last = unfinished.at(-1)
  const next = aim?.world ?? crosshair?.world
  if (last && next) {
    layPaths(brush, scene.camera, [[last, next]], false)
    stroke(brush, { colour: ink.accent, widthPx: 1.25 * ink.weight, dashPx: [5, 4], halo: ink.paper })
  }
  for (const point of unfinished) paintPoint(brush, screenOf(scene.camera, point), false, ink)
  if (first && unfinished.length >= 3) {
    disc(brush, screenOf(scene.camera, first), 10)
    stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
  }
}

/** Open in the middle, so that what it points at can be seen. */
function paintCross(brush: Brush, [x, y]: Point, ink: Ink): void {
  brush.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    brush.moveTo(x + 4 * dx, y + 4 * dy)
    brush.lineTo(x + 18 * dx, y + 18 * dy)
  }
  stroke(brush, { colour: ink.ink, widthPx: 1.75 * ink.weight, halo: ink.paper })
}
