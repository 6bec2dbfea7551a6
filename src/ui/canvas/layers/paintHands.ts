import { type Point, pointDistanceMm, type PxPoint } from '../../../core/geometry'
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
  const handles = handlesOf(scene)
  const points = handles.filter(({ kind }) => kind === 'tracePoint')
  points.forEach((handle, i) => {
    const selected = sameData(handle.selection, scene.selection)
    paintPoint(brush, handle.screen, pointHalfPx(points, i, selected), selected, ink)
  })
  for (const handle of handles) if (handle.kind === 'turnHandle') paintTurnHandle(brush, handle, scene, ink)
  paintUnfinished(brush, scene, ink, hands)
  const at = hands.aim?.world ?? hands.crosshair?.world
  if (at) paintCross(brush, screenOf(scene.camera, at), ink)
}

const POINT_HALF_PX = { least: 1.5, most: 4, selected: 6 } as const

/** Points that lie close together are drawn small, so that the edge between them stays in sight. */
function pointHalfPx(points: readonly Handle[], index: number, selected: boolean): number {
  if (selected) return POINT_HALF_PX.selected
  const here = points[index]
  const next = points[index + 1] ?? points[index - 1]
  if (!here || !next) return POINT_HALF_PX.most
  const spacing = pointDistanceMm(here.screen, next.screen)
  return Math.min(POINT_HALF_PX.most, Math.max(POINT_HALF_PX.least, spacing / 5))
}

function paintPoint(brush: Brush, [x, y]: Point, half: number, selected: boolean, ink: Ink): void {
  brush.beginPath()
  brush.rect(x - half, y - half, 2 * half, 2 * half)
  fill(brush, selected ? ink.accent : ink.paper, 1)
  stroke(brush, { colour: selected ? ink.paper : ink.ink, widthPx: (half < 3 ? 1 : 1.5) * ink.weight })
}

const STALK_PX = 34

/** A disc on a stalk that leads to what it turns, with a bent arrow. */
function paintTurnHandle(brush: Brush, { screen, world }: Handle, scene: Scene, ink: Ink): void {
  const [x, y] = screen
  const [middleX, middleY] = screenOf(scene.camera, world)
  const share = STALK_PX / Math.max(STALK_PX, Math.hypot(middleX - x, middleY - y))
  brush.beginPath()
  brush.moveTo(x + share * (middleX - x), y + share * (middleY - y))
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
  if (last) paintNextLeg(brush, scene, ink, last, aim?.world ?? crosshair?.world)
  for (const point of unfinished) {
    paintPoint(brush, screenOf(scene.camera, point), POINT_HALF_PX.most, false, ink)
  }
  if (first && unfinished.length >= 3) {
    disc(brush, screenOf(scene.camera, first), 10)
    stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
  }
}

function paintNextLeg(brush: Brush, scene: Scene, ink: Ink, last: Point, next: Point | undefined): void {
  if (!next) return
  layPaths(brush, scene.camera, [[last, next]], false)
  stroke(brush, { colour: ink.accent, widthPx: 1.25 * ink.weight, dashPx: [5, 4], halo: ink.paper })
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
