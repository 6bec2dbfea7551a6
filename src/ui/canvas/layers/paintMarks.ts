import type { LengthDisplay } from '../../../core/units'
import { handlesOf } from '../handles'
import type { Ink } from '../ink'
import { placeLabels } from '../labels'
import type { Handle, Scene } from '../tools/toolTypes'
import { type Brush, dimensionLine, disc, PLATE, plate, plateWidth, stroke } from './paint'
import { dimensionsOf, sceneLabels } from './sceneLabels'
import { paintTightPlaces } from './tightPlaces'

/** Marks, dimensions and name plates. */
export function paintMarks(brush: Brush, scene: Scene, ink: Ink, display: LengthDisplay): void {
  for (const { from, to } of dimensionsOf(scene)) {
    dimensionLine(brush, from, to, { colour: ink.ink, widthPx: ink.weight, halo: ink.paper })
  }
  for (const handle of handlesOf(scene)) {
    if (handle.kind === 'mark') paintMark(brush, handle, scene, ink)
  }
  paintTightPlaces(brush, scene, ink)
  const labels = sceneLabels(scene, display)
  const placed = placeLabels(
    labels,
    PLATE.heightPx(ink),
    ({ text, strong }) => plateWidth(brush, ink, text, strong),
    scene.size,
  )
  for (const label of placed.toReversed()) plate(brush, ink, label)
}

/** A ring with four ticks: what it marks stays in sight in its middle. */
function paintMark(brush: Brush, { screen, selection }: Handle, scene: Scene, ink: Ink): void {
  const selected =
    selection?.kind === 'mark' &&
    scene.selection?.kind === 'mark' &&
    scene.selection.markId === selection.markId
  const colour = selected ? ink.accent : ink.ink
  const [x, y] = screen
  disc(brush, screen, 8)
  stroke(brush, { colour, widthPx: (selected ? 3 : 1.75) * ink.weight, halo: ink.paper })
  brush.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    brush.moveTo(x + 4 * dx, y + 4 * dy)
    brush.lineTo(x + 12 * dx, y + 12 * dy)
  }
  stroke(brush, { colour, widthPx: 1.25 * ink.weight, halo: ink.paper })
}
