import { type Point, ringBounds } from '../../../core/geometry'
import type { Stroke } from '../../../core/trace'
import type { TracingState } from '../../../state/tracingStore'
import type { Ink } from '../ink'
import type { ToolInHand } from '../tools/toolTable'
import type { Scene } from '../tools/toolTypes'
import { screenOf } from '../view'
import { type Brush, disc, fill, hatch, layPaths, plate, PLATE, plateWidth, stroke } from './paint'

/** Strokes, proposals and the line that follows the pointer: in the photo, over everything else. */
export function paintTracing(
  brush: Brush,
  scene: Scene,
  ink: Ink,
  tracing: TracingState,
  { rubber, round }: Pick<ToolInHand, 'rubber' | 'round'>,
): void {
  if (scene.view !== 'photo') return
  for (const made of tracing.strokes) paintStroke(brush, scene, ink, made.kind, [made.fromPx, made.toPx])
  if (rubber) paintStroke(brush, scene, ink, scene.tool === 'notWood' ? 'not-wood' : 'wood', rubber)
  if (tracing.outlinePx) paintOutline(brush, scene, ink, tracing)
  paintVoids(brush, scene, ink, tracing)
  paintEdge(brush, scene, ink, tracing)
  if (!round) return
  disc(brush, screenOf(scene.camera, round), scene.pushRadiusPx)
  stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
}

/** Half the length of the signs on a stroke, screen px. */
const SIGN_HALF_PX = 5

/** Wood: a full line with a plus; not wood: a dashed one with a minus. */
function paintStroke(
  brush: Brush,
  { camera }: Scene,
  ink: Ink,
  kind: Stroke['kind'],
  [from, to]: readonly [Point, Point],
): void {
  const isWood = kind === 'wood'
  layPaths(brush, camera, [[from, to]], false)
  stroke(brush, {
    colour: isWood ? ink.accent : ink.ink,
    widthPx: 4 * ink.weight,
    halo: ink.paper,
    ...(isWood ? {} : { dashPx: [7, 5] }),
  })
  const [x, y] = screenOf(camera, from)
  disc(brush, [x, y], 9)
  fill(brush, ink.paper, 1)
  stroke(brush, { colour: isWood ? ink.accent : ink.ink, widthPx: 2 * ink.weight })
  brush.beginPath()
  brush.moveTo(x - SIGN_HALF_PX, y)
  brush.lineTo(x + SIGN_HALF_PX, y)
  if (isWood) {
    brush.moveTo(x, y - SIGN_HALF_PX)
    brush.lineTo(x, y + SIGN_HALF_PX)
  }
  stroke(brush, { colour: isWood ? ink.accent : ink.ink, widthPx: 2 * ink.weight })
}

/** Dashed as long as it is a proposal; paler while a better one is being looked for. */
function paintOutline(brush: Brush, { camera }: Scene, ink: Ink, tracing: TracingState): void {
  if (!tracing.outlinePx) return
  brush.save()
  layPaths(brush, camera, [tracing.outlinePx], true)
  stroke(brush, {
    colour: tracing.isFindingOutline ? ink.inkSoft : ink.accent,
    widthPx: 2.5 * ink.weight,
    dashPx: [9, 5],
    halo: ink.paper,
  })
  brush.restore()
}

function paintVoids(brush: Brush, { camera }: Scene, ink: Ink, { voids, chosenVoid }: TracingState): void {
  for (const [n, { id, ringPx }] of (voids ?? []).entries()) {
    const isChosen = id === chosenVoid
    if (isChosen) hatch(brush, camera, [ringPx], 'void', ink.accent)
    layPaths(brush, camera, [ringPx], true)
    stroke(brush, {
      colour: isChosen ? ink.accent : ink.ink,
      widthPx: (isChosen ? 3 : 2) * ink.weight,
      dashPx: [5, 4],
      halo: ink.paper,
    })
    paintNumber(
      brush,
      ink,
      String(n + 1),
      ringPx.map((at) => screenOf(camera, at)),
      isChosen,
    )
  }
}

function paintNumber(brush: Brush, ink: Ink, text: string, ring: readonly Point[], strong: boolean): void {
  const { minY, minX, maxX } = ringBounds(ring)
  const height = PLATE.heightPx(ink)
  const label = { id: text, text, rank: 0, mustStay: true, strong }
  const width = plateWidth(brush, ink, text, strong)
  plate(brush, ink, { ...label, at: [(minX + maxX) / 2, minY - height], width, height })
}

function paintEdge(brush: Brush, { camera, tool }: Scene, ink: Ink, { edge }: TracingState): void {
  if (edge?.meaning !== tool) return
  // Points closer than a screen pixel show nothing but cost time, at every move of the pointer.
  const shown = (line: readonly Point[]): readonly Point[] => everyFew(line, Math.floor(1 / camera.scale))
  layPaths(brush, camera, [shown(edge.acceptedPx)], false)
  stroke(brush, { colour: ink.accent, widthPx: 2.5 * ink.weight, halo: ink.paper })
  layPaths(brush, camera, [shown(edge.livePx)], false)
  stroke(brush, { colour: ink.accent, widthPx: 1.5 * ink.weight, halo: ink.paper })
  const [first] = edge.acceptedPx
  const last = edge.acceptedPx.at(-1)
  for (const at of [first, last]) {
    if (!at) continue
    disc(brush, screenOf(camera, at), 5)
    fill(brush, ink.paper, 1)
    stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight })
  }
  if (!first || edge.acceptedPx.length < 3) return
  disc(brush, screenOf(camera, first), 10)
  stroke(brush, { colour: ink.accent, widthPx: 2 * ink.weight, halo: ink.paper })
}

/** Every so many points of a line, and its last. */
const everyFew = (line: readonly Point[], step: number): readonly Point[] =>
  step < 2 ? line : line.filter((_, n) => n % step === 0 || n === line.length - 1)
