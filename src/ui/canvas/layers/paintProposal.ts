import { useCallback } from 'react'
import { useStore } from 'zustand'
import type { FillPiece } from '../../../core/layout'
import { fillStore } from '../../../state/fillStore'
import type { Ink } from '../ink'
import type { Scene } from '../tools/toolTypes'
import { regionPaths, slabLinePath, slabRingPath, tableRingPath } from '../worldPaths'
import { type Brush, fill, layPaths, stroke } from './paint'

const DASH = [3, 4] as const

/** Where a proposed piece would lie on the table. */
function paintOnTable(brush: Brush, { frames, camera }: Scene, ink: Ink, { onTable }: FillPiece): void {
  layPaths(brush, camera, regionPaths(frames, [onTable], tableRingPath), true)
  fill(brush, ink.ground, 0.85)
  stroke(brush, { colour: ink.ink, widthPx: 1.75 * ink.weight, dashPx: DASH, halo: ink.paper })
}

/** Where it would be sawn out of the slab. */
function paintOnSlab(brush: Brush, { frames, camera }: Scene, ink: Ink, { onSlab, cuts }: FillPiece): void {
  layPaths(brush, camera, regionPaths(frames, [onSlab], slabRingPath), true)
  fill(brush, ink.ground, 0.5)
  stroke(brush, { colour: ink.ink, widthPx: 1.75 * ink.weight, dashPx: DASH, halo: ink.paper })
  for (const { line } of cuts) {
    const path = slabLinePath(frames, [line.from, line.to])
    layPaths(brush, camera, path === null ? [] : [path], false)
    stroke(brush, { colour: ink.accent, widthPx: 1.5 * ink.weight, dashPx: DASH, halo: ink.paper })
  }
}

/** Draws the fill proposal that is looked at; nothing on the photo. */
export function useProposalPainter(scene: Scene, ink: Ink): (brush: Brush) => void {
  const shown = useStore(fillStore, (state) => state.shown)
  return useCallback(
    (brush: Brush) => {
      if (shown === null || shown.optionId !== scene.option?.id || scene.view === 'photo') return
      const paint = scene.view === 'table' ? paintOnTable : paintOnSlab
      for (const piece of shown.pieces) paint(brush, scene, ink, piece)
    },
    [scene, ink, shown],
  )
}
