import type { SlabPiece } from '../../../core/plan'
import { setsPoints } from '../handles'
import type { Ink } from '../ink'
import { readyValue } from '../../readyValue'
import type { Scene } from '../tools/toolTypes'
import { regionPaths, slabLinePath, slabRingPath, tableRingPath } from '../worldPaths'
import { type Brush, fill, hatch, layPaths, stroke } from './paint'

/** Dashes of the blank: the margin that is sawn off again. */
export const BLANK_DASH = [7, 5] as const

/** What the option makes of the slab: offcuts lit, gaps hatched, pieces ghosted, cuts, blank and finished outline. */
export function paintOption(brush: Brush, scene: Scene, ink: Ink): void {
  if (scene.view === 'table' || !isOnThisSlab(scene) || isEdgeNeeded(scene)) return
  paintOffcuts(brush, scene, ink)
  paintGaps(brush, scene, ink)
  paintPlacedGhosts(brush, scene, ink)
  paintCuts(brush, scene, ink)
  paintFootprint(brush, scene, ink)
}

/** Whoever marks or traces wants to see the bare photo. */
const isEdgeNeeded = ({ view, tool }: Scene): boolean => view === 'photo' && setsPoints(tool)

const isOnThisSlab = ({ optionResult, slab }: Scene): boolean =>
  readyValue(optionResult?.footprint)?.slabId === slab?.id

function paintOffcuts(brush: Brush, scene: Scene, ink: Ink): void {
  for (const piece of readyValue(scene.optionResult?.pieces)?.pieces ?? []) {
    if (piece.use === 'table') continue
    layPaths(brush, scene.camera, regionPaths(scene.frames, [piece.region], slabRingPath), true)
    const selected = isPieceSelected(scene, piece)
    fill(brush, selected ? ink.accent : ink.paper, selected ? 0.25 : 0.32)
    stroke(brush, {
      colour: selected ? ink.accent : ink.inkSoft,
      widthPx: (selected ? 2.5 : 1) * ink.weight,
    })
  }
}

const isPieceSelected = ({ selection }: Scene, piece: SlabPiece): boolean =>
  selection?.kind === 'piece' && selection.key === piece.key

function paintGaps(brush: Brush, scene: Scene, ink: Ink): void {
  const { frames, camera } = scene
  for (const gap of readyValue(scene.optionResult?.coverage)?.gaps ?? []) {
    const paths = regionPaths(frames, [gap.region], tableRingPath)
    layPaths(brush, camera, paths, true)
    fill(brush, ink.paper, 0.45)
    hatch(brush, camera, paths, 'resin', ink.accent)
    layPaths(brush, camera, paths, true)
    stroke(brush, { colour: ink.accent, widthPx: 1 * ink.weight })
  }
}

function paintPlacedGhosts(brush: Brush, scene: Scene, ink: Ink): void {
  const { frames, camera } = scene
  for (const placed of readyValue(scene.optionResult?.coverage)?.placed ?? []) {
    layPaths(brush, camera, regionPaths(frames, placed.inBlank, tableRingPath), true)
    fill(brush, ink.paper, 0.5)
    stroke(brush, { colour: ink.ink, widthPx: 1.25 * ink.weight, dashPx: [2, 3] })
  }
}

function paintCuts(brush: Brush, scene: Scene, ink: Ink): void {
  const { frames, camera, selection } = scene
  for (const cut of readyValue(scene.optionResult?.pieces)?.cuts ?? []) {
    const path = slabLinePath(frames, [cut.from.at, cut.to.at])
    if (!path) continue
    layPaths(brush, camera, [path], false)
    const selected = selection?.kind === 'cut' && selection.cutId === cut.cutId
    stroke(brush, {
      colour: selected ? ink.accent : ink.ink,
      widthPx: (selected ? 3.5 : 1.5) * ink.weight,
      halo: ink.paper,
    })
  }
}

function paintFootprint(brush: Brush, scene: Scene, ink: Ink): void {
  const laid = readyValue(scene.optionResult?.footprint)
  if (!laid) return
  const { frames, camera, selection, tool } = scene
  const blank = tableRingPath(frames, laid.blank)
  if (blank) {
    layPaths(brush, camera, [blank], true)
    stroke(brush, { colour: ink.accent, widthPx: 1.25 * ink.weight, dashPx: BLANK_DASH, halo: ink.paper })
  }
  const finished = tableRingPath(frames, laid.finished)
  if (!finished) return
  layPaths(brush, camera, [finished], true)
  const selected = selection?.kind === 'footprint' || tool === 'footprint'
  stroke(brush, { colour: ink.accent, widthPx: (selected ? 3.25 : 2.25) * ink.weight, halo: ink.paper })
}
